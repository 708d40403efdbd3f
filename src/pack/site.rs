//! The pack of one visit: everything that is done at one site, in one document.

use std::collections::HashSet;

use super::aside::Aside;
use super::attach::{self, Attachment};
use super::front::{Heading, Imprint};
use super::kind::Pack;
use super::outline::{Sources, is_open_error};
use super::render::{PackError, Press};
use super::set::Pages;
use super::site_view::{Gathered, SiteView};
use super::waivers;
use crate::finding::Finding;
use crate::listing::{HopListing, Places};
use crate::network::Trees;
use crate::place::DocumentId;
use crate::sheet::HopSheet;
use crate::spec::{EndName, Language};
use crate::verdict::SetAside;
use crate::voice::Voice;

/// Everything that the pack of a site prints, gathered hop by hop.
pub struct SitePack {
    imprint: Imprint,
    title: String,
    id: String,
    gathered: Gathered,
    listings: Vec<HopListing>,
    findings: Vec<Finding>,
    /// Of each end: what did not count for its hop, and what is not judged there.
    aside: Vec<Aside>,
    sources: Vec<Sources>,
}

impl std::fmt::Debug for SitePack {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("SitePack").field("id", &self.id).finish_non_exhaustive()
    }
}

impl SitePack {
    /// One with nothing in it yet, of the site at an end of a hop.
    #[must_use]
    pub fn of(sheet: &HopSheet<'_>, end: EndName, language: Option<Language>) -> Self {
        let network = sheet.resolved.network;
        let voice = Voice::of(&network.print, language);
        let site = sheet.resolved.ends[end].site;
        Self {
            imprint: Imprint::of(network, voice),
            title: site.title.to_string(),
            id: site.id.to_string(),
            gathered: Gathered::new(voice),
            listings: Vec::new(),
            findings: Vec::new(),
            aside: Vec::new(),
            sources: Vec::new(),
        }
    }

    /// Adds an end of a hop with what is found about it.
    pub fn add(&mut self, sheet: &HopSheet<'_>, findings: &[Finding], end: EndName) {
        self.gathered.add(sheet, end);
        let aside = SetAside::of_hop(sheet, findings);
        self.aside.push(Aside::of(&aside, findings, Pack::Install(end), self.imprint.voice));
        let listing = HopListing::of(sheet);
        if self.listings.iter().all(|known| known.hop != listing.hop) {
            let sources = Sources::of(sheet);
            self.findings.extend(findings.iter().filter(|finding| sources.counts(finding, Pack::Design)).cloned());
            self.listings.push(listing);
            self.sources.push(sources);
        }
    }

    /// Adds the findings that are about no hop but stand in a file that one of its hops is made from.
    pub fn add_findings_of_files(&mut self, all: &[Finding]) {
        let touching = all.iter().filter(|finding| self.sources.iter().any(|sources| sources.are_touched(finding)));
        self.findings.extend(touching.cloned());
    }

    /// Errors that are open at its hops: it is set in type only as a draft while there are any.
    #[must_use]
    pub fn errors(&self) -> usize {
        self.findings.iter().filter(|finding| is_open_error(finding)).count()
    }

    /// Sets it in type.
    ///
    /// # Errors
    /// A broken template or a PDF that would not meet its standards; neither depends on what a network says.
    pub fn set(self, press: &Press, asked_as_draft: bool, trees: &Trees<'_>) -> Result<Vec<u8>, PackError> {
        let (voice, errors) = (self.imprint.voice, self.errors());
        let mut seen = HashSet::new();
        let documents: Vec<DocumentId> = self
            .sources
            .iter()
            .flat_map(|sources| &sources.documents)
            .copied()
            .filter(|one| seen.insert(*one))
            .collect();
        let network = self.sources.first().ok_or(PackError::NotTaken)?.network();
        let places = Places::inside(trees, network, documents.iter().map(|document| document.file));
        let attached = attached(press, trees, &places, &documents, &self.listings);
        let accepted: Vec<&Finding> = self.findings.iter().filter(|finding| finding.waived.is_some()).collect();
        let waivers = waivers::table(&accepted, voice);
        let front = self.imprint.front(Heading {
            kind: "pack-site",
            title: voice.with("title-site", &[("site", &self.title)]),
            about: self.title,
            here: None,
            there: None,
            stem: stem(&self.id),
            because: "errors-not-built",
            errors,
            asked: asked_as_draft,
            aside: together(self.aside),
            attached: &attached,
        });
        let view: SiteView = self.gathered.finish().ok_or(PackError::NotTaken)?;
        press.set(&Pages {
            words: voice.sentences(),
            front,
            design: None,
            application: None,
            install: None,
            site: Some(&view),
            acceptance: None,
            network: None,
            waivers,
            waivers_spoken: voice.of_findings(),
            files: attached,
        })
    }
}

/// The name of the file of the pack of a site.
#[must_use]
pub fn site_file_name(site: &str) -> String {
    format!("{}.pdf", stem(site))
}

fn stem(site: &str) -> String {
    format!("{site}-site")
}

/// What did not count at any of the ends, each sentence once.
fn together(asides: Vec<Aside>) -> Aside {
    let mut all = Aside { sentences: Vec::new(), unassessed: Vec::new() };
    for aside in asides {
        for (list, more) in [(&mut all.sentences, aside.sentences), (&mut all.unassessed, aside.unassessed)] {
            for sentence in more {
                if !list.contains(&sentence) {
                    list.push(sentence);
                }
            }
        }
    }
    all
}

/// What travels inside: the sources of all its hops, and their sheets.
fn attached(
    press: &Press,
    trees: &Trees<'_>,
    places: &Places<'_>,
    documents: &[DocumentId],
    listings: &[HopListing],
) -> Vec<Attachment> {
    let mut attached = attach::sources(trees.files(), places, documents);
    if press.attaches() {
        attached.extend(listings.iter().map(|listing| attach::sheet(places, &listing.of_design())));
    }
    attached
}
