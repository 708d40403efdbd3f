//! A pack as page data, handed to the press.

use std::collections::BTreeMap;

use serde::Serialize;

use super::acceptance::Acceptance;
use super::aside::Aside;
use super::attach::{self, Attachment};
use super::design::Design;
use super::front::Front;
use super::install::Install;
use super::render::{PackError, Press};
use super::{HopPacks, Pack, waivers, words};
use crate::finding::Finding;
use crate::network::Files;
use crate::place::DocumentId;

/// A pack with its page data; what the templates receive.
#[derive(Debug, Serialize)]
struct Pages<'a> {
    /// The sentences of the language that leave nothing open, by key.
    words: &'static BTreeMap<String, String>,
    front: Front,
    design: Option<Design>,
    install: Option<&'a Install>,
    /// Departures somebody has accepted; a crew must know of them.
    waivers: words::Table,
    /// In which language they are told, where that is another.
    waivers_spoken: Option<String>,
    acceptance: Option<Acceptance>,
    files: Vec<Attachment>,
}

impl HopPacks {
    /// Sets a pack in type.
    ///
    /// # Errors
    /// A broken template or a PDF that would not meet its standards; neither depends on what a network says.
    pub fn set(&self, press: &Press, pack: Pack, asked_as_draft: bool, files: &Files) -> Result<Vec<u8>, PackError> {
        let acceptance = match pack {
            Pack::Acceptance(end) => self.acceptance(end),
            Pack::Design | Pack::Install(_) => None,
        };
        let record = acceptance.map(|acceptance| acceptance.record);
        let used: Vec<DocumentId> = self.documents.iter().copied().chain(record).collect();
        let files = attach::relative(files, self.network_file(), &used);
        let mut attached = attach::sources(&files, &self.documents);
        attached.extend(record.and_then(|record| attach::record(&files, record)));
        let listing = if record.is_some() { self.listing.clone() } else { self.listing.of_design() };
        attached.push(attach::sheet(&files, &listing));
        attached.extend(self.profile.as_deref().map(|table| attach::profile(self.names().hop(), table)));
        let findings = self.findings_of(pack);
        let aside = Aside::of(&self.aside, &findings, pack, self.naming.voice);
        let front = self.naming.front(pack, self.errors(pack), asked_as_draft, aside, &attached);
        let (design, install) = match pack {
            Pack::Design => (Some(self.design.with_findings(&findings, &files)), None),
            Pack::Install(end) => (None, Some(&self.installs[end])),
            Pack::Acceptance(_) => (None, None),
        };
        let acceptance = acceptance.map(|acceptance| acceptance.with_findings(&findings, &files));
        let accepted: Vec<&Finding> = self.findings.iter().filter(|finding| finding.waived.is_some()).collect();
        let waivers = waivers::table(&accepted, self.naming.voice);
        let (words, waivers_spoken) = (self.naming.voice.sentences(), self.naming.voice.of_findings());
        press.set(&Pages { words, front, design, install, acceptance, waivers, waivers_spoken, files: attached })
    }
}
