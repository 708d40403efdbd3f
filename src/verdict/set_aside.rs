//! What did not count: rules that are off or lowered, hops that were not judged, findings that are waived or known.
//!
//! "No findings" is worth a signature only beside this. It is counted here, once, and stands in every output.

use std::collections::BTreeSet;

use crate::finding::Finding;
use crate::finding::faults::NOT_EVALUATED;
use crate::rules::{Quieted, quieted};
use crate::sheet::HopSheet;
use crate::verdict::{Evaluation, HopRun};

/// What did not count in a run, or for a hop.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct SetAside {
    /// Rules that networks have switched off or lowered.
    pub quieted: Vec<Quieted>,
    /// Hops that were not judged, or not in full.
    pub not_judged: usize,
    /// Findings that a waiver accepts.
    pub waived: usize,
    /// Findings that a baseline knows.
    pub baselined: usize,
}

/// Whether a hop is among what was asked about, or something found there keeps it from being judged.
fn concerns<R>(hop: &HopRun, evaluation: &Evaluation<R>) -> bool {
    let waits = |finding: &Finding| *finding.rule == NOT_EVALUATED && finding.hop.as_deref() == Some(hop.id.as_str());
    hop.asked || evaluation.everything().any(waits)
}

impl SetAside {
    /// That of a run.
    #[must_use]
    pub fn of<R>(evaluation: &Evaluation<R>) -> Self {
        Self {
            quieted: evaluation.quieted.clone(),
            not_judged: evaluation.judged.iter().filter(|hop| !hop.evaluated && concerns(hop, evaluation)).count(),
            waived: evaluation.waived.len(),
            baselined: evaluation.baselined.len(),
        }
    }

    /// That of one hop, by all its findings: a baseline counts for no hop by itself.
    #[must_use]
    pub fn of_hop(sheet: &HopSheet<'_>, findings: &[Finding]) -> Self {
        let in_part = findings.iter().any(|finding| *finding.rule == NOT_EVALUATED);
        Self {
            quieted: quieted(sheet.resolved.network),
            not_judged: usize::from(in_part),
            waived: findings.iter().filter(|finding| finding.waived.is_some()).count(),
            baselined: 0,
        }
    }

    /// The rules that are off, for all files or for some; each once, by name.
    #[must_use]
    pub fn off(&self) -> BTreeSet<&'static str> {
        self.quieted.iter().filter(|one| one.to.is_none()).map(|one| one.rule.name).collect()
    }

    /// The rules that are lowered and nowhere off; each once, by name.
    #[must_use]
    pub fn lowered(&self) -> BTreeSet<&'static str> {
        let off = self.off();
        self.quieted.iter().map(|one| one.rule.name).filter(|name| !off.contains(name)).collect()
    }
}
