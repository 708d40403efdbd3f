//! What changed in the numbers between two states of a network, by how much and why.
//!
//! Two [`Side`]s come in, each evaluated by this same program, so that a difference is never one of versions. Hops are
//! matched by id, so moved files and reordered documents are no change. What goes out is a [`Comparison`]: the hops that
//! change, worst first, each with its quantities before and after, its findings and the edited fields behind them; before
//! them all, what the change does to the gate it is to pass. The forms set it as text, Markdown or JSON and decide nothing.

mod alike;
mod became;
mod cause;
mod change;
mod differences;
mod edits;
mod found;
mod gate;
mod gate_words;
mod groups;
mod held;
mod hop;
mod hop_trees;
mod index;
mod json;
mod judged;
mod known;
mod markdown;
mod matching;
mod noise;
mod notes;
mod outline;
mod side;
mod state;
mod summary;
mod survey;
mod text;
mod together;
mod words;

pub use cause::{Cause, Class};
pub use change::{Aside, Change, FindingChange, HopChange, Outcome, Shown, Status};
pub use gate::{Effect, GateChange, Part};
pub use groups::{Group, Range};
pub use json::{comparison_schema, json};
pub use judged::{Quantity, quantities};
pub use known::KnownSide;
pub use markdown::{BUDGET, Comment, markdown};
pub use noise::{Noise, Threshold};
pub use side::{HopSide, Measure, Side};
pub use summary::Summary;
pub use text::text;

use std::collections::BTreeSet;

use rayon::prelude::*;

use crate::place::Place;
use crate::verdict::{OpenHop, Read};
use alike::Alike;
use edits::Edits;
use held::ByGate;
use hop::Difference;
use hop_trees::HopTrees;
use matching::Pair;
use state::State;
use together::Together;

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
    /// Hops that change for one reason, by their places in `hops`.
    pub groups: Vec<Group>,
    /// Findings that are about no hop and are there on one side only.
    pub findings: Vec<FindingChange>,
    /// What holds for both sides and a reader must know, a sentence each.
    pub notes: Vec<String>,
    /// Every field that was edited, in order of file and line.
    pub edits: Vec<Cause>,
    /// How many of each there are.
    pub summary: Summary,
    /// Hops that are made of the same on both sides, and so were not computed. They are among the unchanged.
    pub known: usize,
}

/// Subtracts two states of a network. The new one is judged by the gate of the old one, and by its own. Changes that
/// `noise` calls too small are counted and not listed. A hop that is made of the same on both sides is not computed at all.
#[must_use]
pub fn compare(old: &Side, new: &Side, noise: &Noise) -> Comparison {
    let open = [old.read.open(), new.read.open()];
    let states = [State::of(old, &open[0]), State::of(new, &open[1])];
    let alike = Alike::of([old, new]);
    let edits = Edits::between([old, new], &alike);
    let mut gate = gate::written(old, new, &alike);
    // What a baseline knows changes no finding.
    let by_other = gate.iter().any(|change| change.part != Part::Baseline);
    let read = by_other.then(|| Read::of(&new.read.scope().clone().judged_by(old.read.scope().clone())));
    let judged = read.as_ref().map(Read::open);
    let by_gate = judged.as_ref().map(|open| ByGate::of(open, gate::quieted(&gate))).unwrap_or_default();
    let with = hop::With { edits: &edits, gate: &by_gate, noise, files: [old.files(), new.files()] };
    let pairs = matching::pairs(&states[0], &states[1]);
    let known = Together::of(&pairs, &alike, [old, new]).known(&pairs);
    let is_known = |pair: &Pair<'_>| pair.here[1].computed().is_some_and(|hop| known.contains(&hop.hop.hop.at));
    let differences: Vec<Option<Difference>> =
        pairs.par_iter().map(|pair| (!is_known(pair)).then(|| hop::change(pair, &with))).collect();
    let known = differences.iter().filter(|difference| difference.is_none()).count();
    let mut summary = Summary::default();
    summary.hops = pairs.len();
    let mut hops = Vec::new();
    for (pair, difference) in pairs.iter().zip(differences) {
        match difference.unwrap_or(Difference::None) {
            Difference::Shown(change) => hops.push(*change),
            Difference::Small => summary.small += 1,
            Difference::None => {
                summary.unchanged += 1;
                summary.never_computed += usize::from(pair.is_never_computed());
            }
        }
    }
    hops.sort_by(change::worst_first);
    for hop in &hops {
        summary.count(hop.outcome);
    }
    gate::finish(&mut gate, &hops, |change| first_line(change, &states, &edits));
    summary.gate = gate.len();
    let findings = about_no_hop(&states, &edits);
    summary.findings = findings.len();
    let computed = states.iter().flat_map(|state| &state.hops);
    let networks: BTreeSet<String> = computed.map(|hop| hop.hop.network.id.to_string()).collect();
    Comparison {
        names: [old.name.clone(), new.name.clone()],
        networks: networks.into_iter().collect(),
        gate,
        groups: groups::of(&hops),
        hops,
        findings,
        notes: notes::of(old, new),
        edits: edits.into_causes(),
        summary,
        known,
    }
}

/// The first line of a hop that is gone or no longer judged, on the new side if it has it.
fn first_line(change: &HopChange, states: &[State<'_>; 2], edits: &Edits<'_>) -> Option<(String, usize)> {
    let name = change.renamed_from.as_ref().unwrap_or(&change.hop);
    let is_it = |hop: &&OpenHop<'_>| *hop.hop.hop.id.0 == *change.hop || *hop.hop.hop.id.0 == **name;
    [1, 0].into_iter().find_map(|side| {
        let state = &states[side];
        let hop = *state.hops.iter().find(is_it)?;
        let place = Place::document(hop.hop.hop.at);
        edits.line(side, &place.into(), &HopTrees::of(state.side.files(), Some(hop)))
    })
}

/// The findings that are about no hop and are there on one side only, or weigh differently.
fn about_no_hop(states: &[State<'_>; 2], edits: &Edits<'_>) -> Vec<FindingChange> {
    let [old, new] = states;
    let trees = [0, 1].map(|side| HopTrees::of(states[side].side.files(), None));
    let after = held::own(&new.findings);
    let found = found::findings(&old.findings, &after).into_iter().filter(|found| !found.is_as_before());
    found.map(|found| found.placed(edits, &trees)).collect()
}

impl Comparison {
    /// Whether nothing is worth a line.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.hops.is_empty() && self.findings.is_empty() && self.gate.is_empty()
    }

    /// The hops that are told one by one: those in no group, and the worst of each. Worst first.
    pub fn told_alone(&self) -> impl Iterator<Item = &HopChange> {
        let in_group: BTreeSet<usize> = self.groups.iter().flat_map(|group| &group.hops[1..]).copied().collect();
        self.hops.iter().enumerate().filter(move |(number, _)| !in_group.contains(number)).map(|(_, hop)| hop)
    }

    /// The hops that fail or are not judged any more, worst first.
    pub fn failing(&self) -> impl Iterator<Item = &HopChange> {
        let fails = [Outcome::NowFails, Outcome::NewAndFails, Outcome::NotJudged];
        self.hops.iter().filter(move |hop| fails.contains(&hop.outcome))
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
