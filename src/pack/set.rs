//! A pack as page data, handed to the press.

use std::collections::BTreeMap;

use serde::Serialize;

use super::acceptance::Acceptance;
use super::application::ApplicationPage;
use super::aside::Aside;
use super::attach::{self, Attachment};
use super::design::Design;
use super::front::Front;
use super::install::Install;
use super::outline::is_open_error;
use super::render::{PackError, Press};
use super::site_view::SiteView;
use super::{Body, HopPacks, NetworkPack, Pack, network, waivers, words};
use crate::finding::Finding;
use crate::listing::Places;
use crate::network::Trees;
use crate::place::{DocumentId, FileId};

/// A pack with its page data; what the templates receive.
#[derive(Debug, Serialize)]
pub(super) struct Pages<'a> {
    /// The sentences of the language that leave nothing open, by key.
    pub words: &'static BTreeMap<String, String>,
    pub front: Front,
    pub design: Option<Design>,
    pub application: Option<&'a ApplicationPage>,
    pub install: Option<&'a Install>,
    pub site: Option<&'a SiteView>,
    /// Departures somebody has accepted; a crew must know of them.
    pub waivers: words::Table,
    /// In which language they are told, where that is another.
    pub waivers_spoken: Option<String>,
    pub acceptance: Option<Acceptance>,
    pub network: Option<network::Pages>,
    pub files: Vec<Attachment>,
}

impl HopPacks {
    /// Sets a pack in type.
    ///
    /// # Errors
    /// A broken template or a PDF that would not meet its standards; neither depends on what a network says. A pack that was
    /// not taken out of the sheet, such as the acceptance of an end without a record.
    pub fn set(
        &self,
        press: &Press,
        pack: Pack,
        asked_as_draft: bool,
        trees: &Trees<'_>,
    ) -> Result<Vec<u8>, PackError> {
        let body = self.bodies.iter().find(|(of, _)| *of == pack).map(|(_, body)| body).ok_or(PackError::NotTaken)?;
        let record = match body {
            Body::Acceptance(acceptance) => Some(acceptance.record),
            Body::Design(_) | Body::Licence(_) | Body::Install(_) => None,
        };
        let used = self.sources.documents.iter().chain(&record).map(|document| document.file);
        let places = Places::inside(trees, self.sources.network(), used);
        let attached = self.attached(press, record, trees, &places);
        let findings = self.findings_of(pack);
        let errors = findings.iter().filter(|finding| is_open_error(finding)).count();
        let aside = Aside::of(&self.aside, &findings, pack, self.naming.voice);
        let front = self.naming.front(pack, errors, asked_as_draft, aside, &attached);
        let accepted: Vec<&Finding> = self.findings.iter().filter(|finding| finding.waived.is_some()).collect();
        let pages = Pages {
            words: self.naming.voice.sentences(),
            front,
            design: None,
            application: None,
            install: None,
            site: None,
            acceptance: None,
            network: None,
            waivers: waivers::table(&accepted, self.naming.voice),
            waivers_spoken: self.naming.voice.of_findings(),
            files: attached,
        };
        press.set(&match body {
            Body::Design(design) => Pages { design: Some(design.with_findings(&findings, &places)), ..pages },
            Body::Licence(page) => Pages { application: Some(page), ..pages },
            Body::Install(install) => Pages { install: Some(install), ..pages },
            Body::Acceptance(acceptance) => {
                Pages { acceptance: Some(acceptance.with_findings(&findings, &places)), ..pages }
            }
        })
    }

    /// What travels inside.
    fn attached(
        &self,
        press: &Press,
        record: Option<DocumentId>,
        trees: &Trees<'_>,
        places: &Places<'_>,
    ) -> Vec<Attachment> {
        // The mark at the foot follows these, also where nothing is attached.
        let mut attached = attach::sources(trees.files(), places, &self.sources.documents);
        if !press.attaches() {
            return attached;
        }
        attached.extend(record.and_then(|record| attach::record(trees.files(), places, record)));
        let of_design = || attach::sheet(places, &self.listing.of_design());
        attached.push(match record {
            Some(_) => attach::sheet(places, &self.listing),
            None => self.attached.get_or_init(of_design).clone(),
        });
        attached.extend(self.profile.as_deref().map(|table| attach::profile(self.names().hop(), table)));
        attached
    }
}

impl NetworkPack {
    /// Sets the pack in type, with all files of the network inside.
    ///
    /// # Errors
    /// As of [`HopPacks::set`].
    pub fn set(&self, press: &Press, asked_as_draft: bool, trees: &Trees<'_>) -> Result<Vec<u8>, PackError> {
        let files = trees.files();
        let numbers = (0..files.list.len()).filter_map(|number| u32::try_from(number).ok()).map(FileId);
        let documents: Vec<DocumentId> = numbers.map(|file| DocumentId { file, number: 0 }).collect();
        let places = Places::inside(trees, self.network, documents.iter().map(|document| document.file));
        let attached = attach::sources(files, &places, &documents);
        let front = self.imprint.front(self.heading(asked_as_draft, &attached));
        press.set(&Pages {
            words: self.voice().sentences(),
            front,
            design: None,
            application: None,
            install: None,
            site: None,
            acceptance: None,
            network: Some(self.pages(&places)),
            waivers: self.waivers(),
            waivers_spoken: self.voice().of_findings(),
            files: attached,
        })
    }
}
