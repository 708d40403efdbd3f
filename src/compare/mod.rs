//! What changed in the numbers between two states of a network, by how much and why.
//!
//! Two [`Side`]s come in, each evaluated by this same program, so that a difference is never one of versions. Hops are
//! matched by id, so moved files and reordered documents are no change. What goes out is a [`Comparison`]: the hops that
//! change, worst first, each with its quantities before and after, its findings and the edited fields behind them. The
//! forms set it as text, Markdown or JSON and decide nothing.

mod cause;
mod change;
mod hop;
mod json;
mod judged;
mod markdown;
mod matching;
mod noise;
mod notes;
mod side;
mod summary;
mod text;
mod words;

pub use cause::{Cause, Class};
pub use change::{Change, FindingChange, HopChange, Outcome, Shown, Status};
pub use json::json;
pub use markdown::{BUDGET, Comment, markdown};
pub use noise::{Noise, Threshold};
pub use side::{HopSide, Side, Waiting};
pub use summary::Summary;
pub use text::text;

use cause::Edits;
use matching::Pair;

/// What two states of a network differ in.
#[derive(Debug)]
pub struct Comparison {
    /// What the two are called.
    pub names: [String; 2],
    /// The ids of the networks, sorted.
    pub networks: Vec<String>,
    /// Hops that change, worst first.
    pub hops: Vec<HopChange>,
    /// Findings that are about no hop and are there on one side only.
    pub findings: Vec<FindingChange>,
    /// What holds for both sides and a reader must know, a sentence each.
    pub notes: Vec<String>,
    /// Every field that was edited, in order of file and line.
    pub edits: Vec<Cause>,
    /// How many of each there are.
    pub summary: Summary,
}

/// Subtracts two states of a network. Changes that `noise` calls too small are counted and not listed.
#[must_use]
pub fn compare(old: &Side, new: &Side, noise: &Noise) -> Comparison {
    let edits = Edits::between(&old.files, &new.files);
    let mut summary = Summary::default();
    let mut hops = Vec::new();
    for pair in matching::pairs(old, new) {
        summary.hops += 1;
        match hop::change(&pair, &edits, noise) {
            hop::Difference::Shown(change) => hops.push(*change),
            hop::Difference::Small => summary.small += 1,
            hop::Difference::None => {
                summary.unchanged += 1;
                summary.never_computed += usize::from(matches!(pair, Pair { old: None, new: None, .. }));
            }
        }
    }
    hops.sort_by(change::worst_first);
    for hop in &hops {
        summary.count(hop.outcome);
    }
    let findings: Vec<FindingChange> = hop::findings(&old.findings, &new.findings, &edits)
        .into_iter()
        .filter(|finding| finding.status != Status::Existing)
        .collect();
    summary.findings = findings.len();
    let mut networks: Vec<String> =
        [old, new].iter().flat_map(|side| side.hops.iter().map(|hop| hop.network.clone())).collect();
    networks.sort();
    networks.dedup();
    Comparison {
        names: [old.name.clone(), new.name.clone()],
        networks,
        hops,
        findings,
        notes: notes::of(old, new),
        edits: edits.into_causes(),
        summary,
    }
}

impl Comparison {
    /// Whether nothing is worth a line.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.hops.is_empty() && self.findings.is_empty()
    }

    /// Whether something got worse than it may: a hop now fails, can no longer be computed, has an error more, or is new
    /// and fails; or an error that is about no hop is new.
    #[must_use]
    pub fn regresses(&self) -> bool {
        self.hops.iter().any(HopChange::regresses) || self.findings.iter().any(FindingChange::regresses)
    }
}
