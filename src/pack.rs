//! Packs: the PDF a reviewer decides a hop by, and the PDF a crew carries to one end of it.
//!
//! ```text
//! sheet + findings ─HopPacks::of→ plain data ─Press::set→ PDF bytes
//! ```
//!
//! Nothing here computes a physical quantity: what is printed is the text of a sheet line or the words of an author. The
//! views hold strings, the templates set them; no user text is ever read as template code. A pack names no clock and no
//! machine, so the same network gives the same bytes.

mod attach;
mod cautions;
mod decision;
mod design;
mod figures;
mod front;
mod glyphs;
mod install;
mod licence;
mod lobes;
mod parts;
mod render;
mod steps;
mod tables;
mod waivers;
mod words;

use serde::Serialize;

use crate::finding::Finding;
use crate::listing::HopListing;
use crate::network::Files;
use crate::place::{DocumentId, FileId};
use crate::rule::Severity;
use crate::sheet::HopSheet;

use attach::Attachment;
use design::Design;
use front::{Front, Naming};
use install::Install;

pub use render::{PackError, Press, on_presses};

/// One end of a hop.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum End {
    /// End `a`.
    A,
    /// End `b`.
    B,
}

impl End {
    /// Both.
    pub const BOTH: [Self; 2] = [Self::A, Self::B];

    /// The letter as written in a hop.
    #[must_use]
    pub const fn letter(self) -> &'static str {
        match self {
            Self::A => "a",
            Self::B => "b",
        }
    }
}

/// Which pack of a hop.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pack {
    /// For review at a desk.
    Design,
    /// For the crew at one end.
    Install(End),
}

/// Everything the packs of one hop print, free of the library it came from.
#[derive(Debug)]
pub struct HopPacks {
    naming: Naming,
    design: Design,
    installs: [Install; 2],
    listing: HopListing,
    findings: Vec<Finding>,
    documents: Vec<DocumentId>,
}

/// A pack with its page data; what the templates receive.
#[derive(Debug, Serialize)]
struct Pages<'a> {
    front: Front,
    design: Option<Design>,
    install: Option<&'a Install>,
    files: Vec<Attachment>,
}

impl HopPacks {
    /// Takes what the packs print out of a sheet and its findings.
    #[must_use]
    pub fn of(sheet: &HopSheet<'_>, findings: &[Finding]) -> Self {
        Self {
            naming: Naming::of(sheet),
            design: Design::of(sheet),
            installs: End::BOTH.map(|end| Install::of(sheet, end)),
            listing: HopListing::of(sheet),
            findings: findings.to_vec(),
            documents: attach::documents(sheet.resolved, findings),
        }
    }

    /// Adds the findings that are about no hop but stand in a file this hop is made from: a page must not look sound
    /// while one of its sources has an error.
    pub fn add_findings_of_files(&mut self, all: &[Finding]) {
        let ours = |file: FileId| self.documents.iter().any(|document| document.file == file);
        let touches = |finding: &&Finding| {
            finding.hop.is_none() && finding.labels.iter().filter_map(|label| label.spot.file()).any(ours)
        };
        self.findings.extend(all.iter().filter(touches).cloned());
    }

    /// The hop's id.
    #[must_use]
    pub fn hop(&self) -> &str {
        &self.naming.hop
    }

    /// The site of an end, by id.
    #[must_use]
    pub fn site(&self, end: End) -> &str {
        &self.naming.end(end).site
    }

    /// Errors that are open: a pack is set in type only as a draft while there are any.
    #[must_use]
    pub fn errors(&self) -> usize {
        let open = self.findings.iter().filter(|finding| finding.waived.is_none());
        open.filter(|finding| finding.severity == Severity::Error).count()
    }

    /// The name of a pack's file: `ridge-dam-design.pdf`, `ridge-dam-a-ridge-install.pdf`.
    #[must_use]
    pub fn file_name(&self, pack: Pack) -> String {
        format!("{}.pdf", self.naming.stem(pack))
    }

    /// Sets a pack in type.
    ///
    /// # Errors
    /// A broken template or a PDF that would not meet its standards; neither depends on what a network says.
    pub fn set(&self, press: &Press, pack: Pack, asked_as_draft: bool, files: &Files) -> Result<Vec<u8>, PackError> {
        let network_file = self.documents.first().map_or(FileId(0), |document| document.file);
        let files = attach::relative(files, network_file, &self.documents);
        let attached = attach::attachments(&files, &self.documents, &self.listing);
        let front = self.naming.front(pack, self.errors(), asked_as_draft, &attached);
        let (design, install) = match pack {
            Pack::Design => (Some(self.design.with_findings(&self.findings, &files)), None),
            Pack::Install(End::A) => (None, Some(&self.installs[0])),
            Pack::Install(End::B) => (None, Some(&self.installs[1])),
        };
        press.set(&Pages { front, design, install, files: attached })
    }
}
