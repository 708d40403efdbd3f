//! What changed in the numbers between two states of a network, by how much and why.
//!
//! Two [`Side`]s come in, each evaluated by this same program, so that a difference is never one of versions. Hops are
//! matched by id, so moved files and reordered documents are no change. What goes out is a [`Comparison`]: the hops that
//! change, worst first, each with its quantities before and after, its findings and the edited fields behind them; before
//! them all, what the change does to the gate it is to pass. The forms set it as text, Markdown or JSON and decide nothing.

mod became;
mod cause;
mod change;
mod differences;
mod edits;
mod gate;
mod gate_words;
mod held;
mod hop;
mod index;
mod json;
mod judged;
mod known;
mod markdown;
mod matching;
mod noise;
mod notes;
mod side;
mod summary;
mod survey;
mod text;
mod words;

pub use cause::{Cause, Class};
pub use change::{Aside, Change, FindingChange, HopChange, Outcome, Shown, Status};
pub use gate::{Effect, GateChange, Part};
pub use json::json;
pub use known::KnownSide;
pub use markdown::{BUDGET, Comment, markdown};
pub use noise::{Noise, Threshold};
pub use side::{HopSide, Side, Waiting};
pub use summary::Summary;
pub use text::text;

use crate::place::Place;
use edits::Edits;
use held::ByGate;
use matching::Pair;

/// What two states of a network differ in.
#[derive(Debug)]
pub struct Comparison {
    /// What the two are called.
    pub names: [String; 2],
    /// The ids of the networks, sorted.
    pub networks: Vec<String>,
    /// What the change does to the gate it is to pass, worst first.
    pub gate: Vec<GateChange>,
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

/// Subtracts two states of a network. The new one is judged by the gate of the old one, and by its own. Changes that
/// `noise` calls too small are counted and not listed.
#[must_use]
pub fn compare(old: &Side, new: &Side, noise: &Noise) -> Comparison {
    let edits = Edits::between(&old.files, &new.files);
    let mut gate = gate::written(old, new);
    let by_gate = if gate.is_empty() { ByGate::default() } else { ByGate::of(new, old, gate::quieted(&gate)) };
    let mut summary = Summary::default();
    let mut hops = Vec::new();
    for pair in matching::pairs(old, new) {
        summary.hops += 1;
        match hop::change(&pair, &edits, &by_gate, noise) {
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
    let first_line = |change: &HopChange| {
        let name = change.renamed_from.as_ref().unwrap_or(&change.hop);
        let find = |side: &Side, number: usize| {
            let hop = side.hops.iter().find(|hop| hop.hop == change.hop || hop.hop == *name)?;
            edits.line(number, &Place::document(hop.document).into())
        };
        find(new, 1).or_else(|| find(old, 0))
    };
    gate::finish(&mut gate, &hops, first_line);
    summary.gate = gate.len();
    let findings: Vec<FindingChange> = hop::findings(&old.findings, &held::own(&new.findings), &edits)
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
        gate,
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
        self.hops.is_empty() && self.findings.is_empty() && self.gate.is_empty()
    }

    /// Whether the gate may let more through than before.
    #[must_use]
    pub fn weakens(&self) -> bool {
        self.gate.iter().any(GateChange::weakens)
    }

    /// Whether something got worse than it may by the gate before: a hop now fails, is no longer judged, has an error more
    /// or a worse one, or is new and fails; or an error that is about no hop is new.
    #[must_use]
    pub fn regresses(&self) -> bool {
        self.hops.iter().any(HopChange::regresses) || self.findings.iter().any(FindingChange::regresses)
    }
}
