//! What is known of the packs of a hop before any is made: what they are called, and whether something forbids them.
//!
//! It is taken of every hop that is asked for; what their pages say only of the one on the press.

use super::{Pack, PackNames};
use crate::finding::rule::Severity;
use crate::finding::{Finding, Spot};
use crate::network::mark;
use crate::place::{DocumentId, FileId};
use crate::sheet::HopSheet;
use crate::spec::{Both, EndName};

/// The packs of a hop, not made yet.
#[derive(Debug)]
pub struct Outline {
    names: PackNames,
    sources: Sources,
    /// Open errors of the design, and of each acceptance.
    errors: (usize, Both<usize>),
}

impl Outline {
    /// That of a hop, by what is found about it.
    #[must_use]
    pub fn of(sheet: &HopSheet<'_>, findings: &[Finding]) -> Self {
        let mut outline = Self {
            names: PackNames::of(sheet.resolved),
            sources: Sources::of(sheet),
            errors: (0, Both { a: 0, b: 0 }),
        };
        outline.count(findings.iter());
        outline
    }

    /// Adds the findings that are about no hop but stand in a file this hop is made from or a record of it stands in: a page
    /// must not look sound while one of its sources has an error.
    pub fn add_findings_of_files(&mut self, all: &[Finding]) {
        let touching: Vec<&Finding> = all.iter().filter(|finding| self.sources.are_touched(finding)).collect();
        self.count(touching.into_iter());
    }

    fn count<'f>(&mut self, findings: impl Iterator<Item = &'f Finding>) {
        for finding in findings.filter(|finding| is_open_error(finding)) {
            self.errors.0 += usize::from(self.sources.counts(finding, Pack::Design));
            for end in EndName::BOTH {
                self.errors.1[end] += usize::from(self.sources.counts(finding, Pack::Acceptance(end)));
            }
        }
    }

    /// What the packs are called.
    #[must_use]
    pub fn names(&self) -> &PackNames {
        &self.names
    }

    /// Errors that are open: a pack is set in type only as a draft while there are any.
    #[must_use]
    pub fn errors(&self, pack: Pack) -> usize {
        match pack {
            Pack::Design | Pack::Licence | Pack::Install(_) => self.errors.0,
            Pack::Acceptance(end) => self.errors.1[end],
        }
    }
}

/// Whether it keeps a pack from being more than a draft.
pub(super) fn is_open_error(finding: &Finding) -> bool {
    finding.waived.is_none() && finding.severity == Severity::Error
}

/// The documents a hop is made from, and the newest record of each end.
#[derive(Debug)]
pub(super) struct Sources {
    pub documents: Vec<DocumentId>,
    pub records: Both<Option<DocumentId>>,
}

impl Sources {
    pub(super) fn of(sheet: &HopSheet<'_>) -> Self {
        let records = Both::ends(|end| sheet.newest_record(end).map(|record| record.document.at));
        Self { documents: mark::sources(sheet.resolved), records }
    }

    /// The file of the network.
    pub(super) fn network(&self) -> FileId {
        self.documents.first().map_or(FileId(0), |document| document.file)
    }

    fn is_of_design(&self, file: FileId) -> bool {
        self.documents.iter().any(|document| document.file == file)
    }

    /// Whether a finding is about no hop and stands in one of their files.
    pub(super) fn are_touched(&self, finding: &Finding) -> bool {
        let is_ours = |file| self.is_of_design(file) || self.records.iter().flatten().any(|record| record.file == file);
        finding.hop.is_none() && finding.labels.iter().filter_map(|label| label.spot.file()).any(is_ours)
    }

    /// Whether a finding counts for a pack: those of the design do, and for an acceptance also those of its record.
    pub(super) fn counts(&self, finding: &Finding, pack: Pack) -> bool {
        let record = match pack {
            Pack::Acceptance(end) => self.records[end],
            Pack::Design | Pack::Licence | Pack::Install(_) => None,
        };
        let first = finding.labels.first().and_then(|label| label.spot.file());
        // What others put on a support is said where it is written, and is of the design all the same.
        let of_company = || matches!(finding.rule.family, "mount" | "site");
        let of_design =
            finding.rule.family != "record" && (first.is_none_or(|file| self.is_of_design(file)) || of_company());
        let mut touched = finding.labels.iter().filter_map(|label| match &label.spot {
            Spot::Field(place) | Spot::Entry(place, _) => Some(place.document),
            Spot::Bytes(file, _) => record.filter(|record| record.file == *file),
            Spot::Path(_) => None,
        });
        of_design || record.is_some_and(|record| touched.any(|document| document == record))
    }
}
