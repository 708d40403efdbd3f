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
mod application;
mod aside;
mod attach;
mod bill;
mod cautions;
mod company;
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
mod lightning;
mod lobes;
mod names;
mod network;
mod outline;
mod parts;
mod phrases;
mod record_page;
#[cfg(feature = "pages")]
mod render;
#[cfg(feature = "pages")]
mod set;
#[cfg(feature = "pages")]
mod site;
#[cfg(feature = "pages")]
mod site_view;
mod steps;
mod surroundings;
mod tables;
mod waivers;
mod words;

use std::sync::OnceLock;

use crate::finding::Finding;
use crate::listing::HopListing;
use crate::sheet::HopSheet;
use crate::spec::Language;
use crate::verdict::SetAside;
use crate::voice::Voice;

use acceptance::Acceptance;
use application::ApplicationPage;
use attach::Attachment;
use design::Design;
use front::Naming;
use install::Install;
use outline::Sources;

pub use bill::{Bill, BillRow};
pub use form::Form;
pub use kind::Pack;
pub use names::PackNames;
pub use network::{Gathered, HopExtract, NetworkPack};
pub use outline::Outline;
#[cfg(feature = "pages")]
pub use render::{Finish, PackError, Press, on_presses, on_presses_for};
#[cfg(feature = "pages")]
pub use site::{SitePack, site_file_name};

/// Everything that packs of one hop print, free of the library it came from.
#[derive(Debug)]
pub struct HopPacks {
    naming: Naming,
    bodies: Vec<(Pack, Body)>,
    listing: HopListing,
    /// The sheet of the design as it is attached: made once, whichever pack is set first.
    attached: OnceLock<Attachment>,
    profile: Option<String>,
    findings: Vec<Finding>,
    aside: SetAside,
    sources: Sources,
}

/// What the pages of one pack say.
#[derive(Debug)]
enum Body {
    Design(Box<Design>),
    Licence(Box<ApplicationPage>),
    Install(Box<Install>),
    Acceptance(Box<Acceptance>),
}

impl Body {
    /// `None` for the acceptance of an end without a record.
    fn of(sheet: &HopSheet<'_>, pack: Pack, voice: Voice) -> Option<Self> {
        Some(match pack {
            Pack::Design => Self::Design(Box::new(Design::of(sheet, voice))),
            Pack::Licence => Self::Licence(Box::new(ApplicationPage::of(sheet, voice))),
            Pack::Install(end) => Self::Install(Box::new(Install::of(sheet, end, voice))),
            Pack::Acceptance(end) => Self::Acceptance(Box::new(Acceptance::of(sheet, end, voice)?)),
        })
    }
}

impl HopPacks {
    /// Takes what all packs of a hop print out of its sheet and its findings.
    #[must_use]
    pub fn of(sheet: &HopSheet<'_>, findings: &[Finding]) -> Self {
        Self::only(&Pack::ALL, sheet, findings, None)
    }

    /// What some packs print, in a language other than that of the network if one is named.
    #[must_use]
    pub fn only(packs: &[Pack], sheet: &HopSheet<'_>, findings: &[Finding], language: Option<Language>) -> Self {
        let voice = Voice::of(&sheet.resolved.network.print, language);
        let body = |pack: &Pack| Some((*pack, Body::of(sheet, *pack, voice)?));
        Self {
            naming: Naming::of(sheet, voice),
            bodies: packs.iter().filter_map(body).collect(),
            listing: HopListing::of(sheet),
            attached: OnceLock::new(),
            profile: sheet.profile.profile().map(|_| sheet.profile.table()),
            findings: findings.to_vec(),
            aside: SetAside::of_hop(sheet, findings),
            sources: Sources::of(sheet),
        }
    }

    /// Adds the findings that are about no hop but stand in a file this hop is made from or a record of it stands in: a page
    /// must not look sound while one of its sources has an error.
    pub fn add_findings_of_files(&mut self, all: &[Finding]) {
        self.findings.extend(all.iter().filter(|finding| self.sources.are_touched(finding)).cloned());
    }

    /// The findings that count for a pack.
    fn findings_of(&self, pack: Pack) -> Vec<Finding> {
        self.findings.iter().filter(|finding| self.sources.counts(finding, pack)).cloned().collect()
    }

    /// What the packs are called.
    #[must_use]
    pub fn names(&self) -> &PackNames {
        &self.naming.names
    }
}
