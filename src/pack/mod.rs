//! Packs: the PDF a reviewer decides a hop by, the PDF a crew carries to one end of it, and the PDF in which that end is
//! accepted.
//!
//! ```text
//! sheet + findings ─HopPacks::of→ plain data ─Press::set→ PDF bytes
//! ```
//!
//! Nothing here computes a physical quantity: what is printed is the text of a sheet line or the words of an author. The
//! views hold strings, the templates set them; no user text is ever read as template code. A pack names no clock and no
//! machine, so the same network gives the same bytes.

mod acceptance;
mod acceptance_table;
mod aside;
mod attach;
mod cautions;
mod decision;
mod design;
mod figures;
mod form;
mod front;
#[cfg(feature = "pages")]
mod glyphs;
mod install;
mod kind;
mod licence;
mod lobes;
mod parts;
mod phrases;
mod record_page;
#[cfg(feature = "pages")]
mod render;
#[cfg(feature = "pages")]
mod set;
mod steps;
mod tables;
mod waivers;
mod words;

use crate::finding::rule::Severity;
use crate::finding::{Finding, Spot};
use crate::listing::HopListing;
use crate::network::{Files, mark};
use crate::place::{DocumentId, FileId};
use crate::sheet::HopSheet;
use crate::spec::{Both, EndName, Language};
use crate::verdict::SetAside;
use crate::voice::Voice;

use acceptance::Acceptance;
use design::Design;
use front::Naming;
use install::Install;

pub use form::Form;
pub use kind::Pack;
#[cfg(feature = "pages")]
pub use render::{Finish, PackError, Press, on_presses, on_presses_for};

/// Everything the packs of one hop print, free of the library it came from.
#[derive(Debug)]
pub struct HopPacks {
    naming: Naming,
    design: Design,
    installs: Both<Install>,
    acceptances: Both<Option<Acceptance>>,
    listing: HopListing,
    profile: Option<String>,
    findings: Vec<Finding>,
    aside: SetAside,
    documents: Vec<DocumentId>,
}

impl HopPacks {
    /// Takes what the packs print out of a sheet and its findings.
    #[must_use]
    pub fn of(sheet: &HopSheet<'_>, findings: &[Finding]) -> Self {
        Self::in_language(sheet, findings, None)
    }

    /// The same in a language other than that of the network, if one is named.
    #[must_use]
    pub fn in_language(sheet: &HopSheet<'_>, findings: &[Finding], language: Option<Language>) -> Self {
        let voice = Voice::of(&sheet.resolved.network.print, language);
        Self {
            naming: Naming::of(sheet, voice),
            design: Design::of(sheet, voice),
            installs: Both::ends(|end| Install::of(sheet, end, voice)),
            acceptances: Both::ends(|end| Acceptance::of(sheet, end, voice)),
            listing: HopListing::of(sheet),
            profile: sheet.profile.profile().map(|_| sheet.profile.table()),
            findings: findings.to_vec(),
            aside: SetAside::of_hop(sheet, findings),
            documents: mark::sources(sheet.resolved),
        }
    }

    /// Adds the findings that are about no hop but stand in a file this hop is made from or a record of it stands in: a page
    /// must not look sound while one of its sources has an error.
    pub fn add_findings_of_files(&mut self, all: &[Finding]) {
        let records = self.acceptances.iter().flatten().map(|acceptance| acceptance.record.file);
        let files: Vec<FileId> = self.documents.iter().map(|document| document.file).chain(records).collect();
        let touches = |finding: &&Finding| {
            let mut touched = finding.labels.iter().filter_map(|label| label.spot.file());
            finding.hop.is_none() && touched.any(|file| files.contains(&file))
        };
        self.findings.extend(all.iter().filter(touches).cloned());
    }

    /// The findings that count for a pack: those of the design, and for an acceptance also those of its record.
    fn findings_of(&self, pack: Pack) -> Vec<Finding> {
        let record = match pack {
            Pack::Acceptance(end) => self.acceptance(end).map(|acceptance| acceptance.record),
            Pack::Design | Pack::Install(_) => None,
        };
        let design: Vec<FileId> = self.documents.iter().map(|document| document.file).collect();
        let counts = |finding: &&Finding| {
            let first = finding.labels.first().and_then(|label| label.spot.file());
            let of_design = finding.rule.family != "record" && first.is_none_or(|file| design.contains(&file));
            let mut touched = finding.labels.iter().filter_map(|label| match &label.spot {
                Spot::Field(place) | Spot::Entry(place, _) => Some(place.document),
                Spot::Bytes(file, _) => record.filter(|record| record.file == *file),
                Spot::Path(_) => None,
            });
            of_design || record.is_some_and(|record| touched.any(|document| document == record))
        };
        self.findings.iter().filter(counts).cloned().collect()
    }

    fn acceptance(&self, end: EndName) -> Option<&Acceptance> {
        self.acceptances[end].as_ref()
    }

    /// Whether there is anything to print: an acceptance needs a record.
    #[must_use]
    pub fn has(&self, pack: Pack) -> bool {
        match pack {
            Pack::Acceptance(end) => self.acceptance(end).is_some(),
            Pack::Design | Pack::Install(_) => true,
        }
    }

    /// The source mark at the foot of the pages.
    #[must_use]
    pub fn mark(&self, files: &Files) -> String {
        let files = attach::relative(files, self.network_file(), &self.documents);
        attach::mark(&attach::sources(&files, &self.documents))
    }

    fn network_file(&self) -> FileId {
        self.documents.first().map_or(FileId(0), |document| document.file)
    }

    /// The hop's id.
    #[must_use]
    pub fn hop(&self) -> &str {
        &self.naming.hop
    }

    /// The site of an end, by id.
    #[must_use]
    pub fn site(&self, end: EndName) -> &str {
        &self.naming.ends[end].site
    }

    /// Errors that are open: a pack is set in type only as a draft while there are any.
    #[must_use]
    pub fn errors(&self, pack: Pack) -> usize {
        let findings = self.findings_of(pack);
        let open = findings.iter().filter(|finding| finding.waived.is_none());
        open.filter(|finding| finding.severity == Severity::Error).count()
    }

    /// The name of a pack's file: `ridge-dam-design.pdf`, `ridge-dam-a-ridge-install.pdf`.
    #[must_use]
    pub fn file_name(&self, pack: Pack) -> String {
        format!("{}.pdf", self.naming.stem(pack))
    }
}
