//! The search: changes alone, then two and three at a time, the most promising first, until there are enough proposals or no
//! trials are left.
//!
//! Changes that bring a failing hop nearer are kept and go together with others: for what still fails, and for what they break
//! themselves. All trials of a round are listed before the first of them is made, so that nothing depends on which ends first.

use std::collections::{BTreeSet, HashMap, HashSet};

use rayon::prelude::*;

use super::change::Change;
use super::dial;
use super::ground::needs;
use super::narrow;
use super::outcome::{Asked, MOST_CHANGES, Nearest, Outcome, Proposal, Then};
use super::score::gains;
use super::settle;
use super::together::{self, key, shapes, touched};
use super::trial::{Bench, Whole};
use super::verdict::{Found, Verdict};
use crate::verdict::Read;

/// How many of the most promising changes, or pairs of them, are carried on.
const CARRIED: usize = 24;

/// How many of them may be about the same things.
const CARRIED_ALIKE: usize = 4;

/// How many trials of a round that go too far are looked at for a value between.
const DIALLED: usize = 24;

/// Looks for what would make a hop pass. None if the network has no such hop that can be judged.
#[must_use]
pub fn seek(read: &Read, asked: &Asked) -> Option<Outcome> {
    let bench = Bench::of(read, &asked.hop, asked.fail_on)?;
    let today = bench.as_it_is();
    let mut outcome = Outcome {
        hop: asked.hop.clone(),
        failing: today.failing.clone(),
        staying: bench.staying(),
        licence: bench.licence(),
        proposals: Vec::new(),
        nearest: None,
        tried: 0,
        unwritten: 0,
        budget: asked.budget,
        ran_out: false,
    };
    if !outcome.failing.is_empty() && asked.most > 0 {
        Search::of(&bench, asked, read, &today).run(&mut outcome);
    }
    (outcome.tried, outcome.unwritten) = (bench.tried(), bench.unwritten());
    Some(outcome)
}

/// Some changes and what they came to.
#[derive(Clone)]
struct Node {
    changes: Vec<Change>,
    verdict: Verdict,
    score: f64,
}

struct Search<'s> {
    bench: &'s Bench,
    asked: &'s Asked,
    read: &'s Read,
    today: &'s Verdict,
    /// The whole network, read when the first proposal is held against it.
    whole: Option<Whole>,
    /// Of each finding the most that a single change gave.
    most: Vec<f64>,
    /// What single changes scored.
    single: HashMap<String, f64>,
    seen: HashSet<String>,
    /// Shapes of what passes: nothing more is added to those.
    passing: Vec<BTreeSet<String>>,
    nearest: Option<Node>,
}

impl<'s> Search<'s> {
    fn of(bench: &'s Bench, asked: &'s Asked, read: &'s Read, today: &'s Verdict) -> Self {
        Self {
            bench,
            asked,
            read,
            today,
            whole: None,
            most: vec![0.0; today.failing.len()],
            single: HashMap::new(),
            seen: HashSet::new(),
            passing: Vec::new(),
            nearest: None,
        }
    }

    fn run(mut self, outcome: &mut Outcome) {
        let mut carried = vec![Node { changes: Vec::new(), verdict: self.today.clone(), score: 0.0 }];
        for round in 1..=MOST_CHANGES {
            let mut listed = self.listed(&carried);
            let left = self.asked.budget.saturating_sub(self.bench.tried());
            // Pairs leave something for what takes three changes.
            let room = if round == 2 { left * 3 / 5 } else { left };
            let cut = listed.len() > room;
            listed.truncate(room);
            outcome.ran_out |= cut;
            let mut nodes = self.judged(listed, round == 1);
            self.dial(&mut nodes);
            let (passing, failing): (Vec<Node>, Vec<Node>) = nodes.into_iter().partition(|node| node.verdict.passes());
            self.propose(passing, outcome);
            self.remember(&failing);
            if outcome.proposals.len() >= self.asked.most {
                outcome.ran_out = false;
                break;
            }
            carried = carried_on(failing);
        }
        if outcome.proposals.is_empty() {
            outcome.nearest = self
                .nearest
                .map(|node| Nearest { left: node.verdict.left().cloned().collect(), changes: node.changes });
        }
        let costs = together::costs_compare(outcome.proposals.iter().map(|proposal| &proposal.changes));
        outcome.proposals.sort_by(|one, other| together::order(&one.changes, &other.changes, costs));
    }

    /// The trials of a round, the most promising first.
    fn listed(&mut self, carried: &[Node]) -> Vec<Vec<Change>> {
        let bench = self.bench;
        let made: Vec<(Vec<Change>, Vec<Change>)> = carried
            .par_iter()
            .map(|node| {
                let own: HashSet<&str> = self.today.failing.iter().map(|found| found.key.as_str()).collect();
                let (old, new): (Vec<&Found>, Vec<&Found>) =
                    node.verdict.left().partition(|found| own.contains(found.key.as_str()));
                let of = |found: &[&Found]| bench.options(&node.changes, &needs(found, &self.asked.hop));
                (of(&old), of(&new))
            })
            .collect();
        let mut listed: Vec<(f64, Vec<Change>)> = Vec::new();
        for (node, (helping, repairing)) in carried.iter().zip(made) {
            for change in helping.into_iter().chain(repairing) {
                if node.changes.iter().any(|known| known.clashes(&change)) {
                    continue;
                }
                let promise = node.score + self.single.get(&change.key()).copied().unwrap_or(0.25);
                let changes: Vec<Change> = node.changes.iter().cloned().chain([change]).collect();
                let more_than_enough = {
                    let own = shapes(&changes);
                    self.passing.iter().any(|passing| passing.is_subset(&own))
                };
                if !more_than_enough && self.seen.insert(key(&changes)) {
                    listed.push((promise, changes));
                }
            }
        }
        listed.sort_by(|one, other| other.0.total_cmp(&one.0));
        listed.into_iter().map(|(_, changes)| changes).collect()
    }

    /// Judges all trials of a round.
    fn judged(&mut self, listed: Vec<Vec<Change>>, first: bool) -> Vec<Node> {
        let judge = |changes: Vec<Change>| {
            let verdict = self.bench.judge(&changes);
            Node { changes, verdict, score: 0.0 }
        };
        let mut nodes: Vec<Node> = listed.into_par_iter().map(judge).collect();
        if first {
            for node in &nodes {
                for (most, gain) in self.most.iter_mut().zip(gains(&self.today.failing, &node.verdict)) {
                    *most = gain.map_or(*most, |gain| gain.max(*most));
                }
            }
        }
        for node in &mut nodes {
            node.score = self.score(&node.verdict);
            if let [only] = node.changes.as_slice() {
                self.single.insert(only.key(), node.score);
            }
        }
        nodes
    }

    /// Between a value that is too little and one that is too much there may be one that does.
    fn dial(&self, nodes: &mut [Node]) {
        let mut far: Vec<&mut Node> = nodes
            .iter_mut()
            .filter(|node| node.score > 0.0 && dial::went_too_far(&node.changes, &node.verdict, &self.asked.hop))
            .collect();
        far.sort_by(|one, other| other.score.total_cmp(&one.score));
        let left = self.asked.budget.saturating_sub(self.bench.tried());
        far.truncate(DIALLED.min(left / dial::MOST_TRIALS));
        far.into_par_iter().for_each(|node| {
            if let Some((changes, verdict)) = dial::between(self.bench, &node.changes, &self.asked.hop) {
                node.score = self.score(&verdict);
                (node.changes, node.verdict) = (changes, verdict);
            }
        });
    }

    /// How far a trial brings the hop: a finding that is gone counts most, one that gets better by its share of the best that
    /// a single change does, one that is new against it.
    fn score(&self, verdict: &Verdict) -> f64 {
        if !verdict.is_judged {
            return -10.0;
        }
        let gains = gains(&self.today.failing, verdict).into_iter().zip(&self.most);
        let better: f64 = gains
            .map(|(gain, most)| gain.map_or(1.5, |gain| if *most > 0.0 { (gain / most).clamp(-1.0, 1.0) } else { 0.0 }))
            .sum();
        let own = |found: &&Found| self.today.failing.iter().any(|known| known.key == found.key);
        let new = u32::try_from(verdict.left().filter(|found| !own(found)).count()).unwrap_or(u32::MAX);
        better - 0.5 * f64::from(new)
    }

    fn remember(&mut self, failing: &[Node]) {
        for node in failing.iter().filter(|node| node.score > 0.0) {
            if self.nearest.as_ref().is_none_or(|nearest| node.score > nearest.score + 1e-9) {
                self.nearest = Some(node.clone());
            }
        }
    }

    /// Settles what passes and takes the best of each sort.
    fn propose(&mut self, passing: Vec<Node>, outcome: &mut Outcome) {
        let mut passing: Vec<Vec<Change>> = passing.into_iter().map(|node| node.changes).collect();
        let costs = together::costs_compare(passing.iter());
        passing.sort_by(|one, other| together::order(one, other, costs));
        let mut sorts: HashSet<String> = outcome.proposals.iter().map(|known| touched(&known.changes)).collect();
        for changes in passing {
            let (shapes, is_known) = (shapes(&changes), sorts.contains(&touched(&changes)));
            if outcome.proposals.len() >= self.asked.most || is_known {
                self.passing.push(shapes);
                continue;
            }
            let settled = settle::settled(self.bench, changes);
            if sorts.contains(&touched(&settled)) {
                self.passing.push(shapes);
            } else if let Some(proposal) = self.held_against_all(settled) {
                self.passing.push(shapes);
                sorts.insert(touched(&proposal.changes));
                outcome.proposals.push(proposal);
            }
        }
    }

    /// A proposal, if it also passes with the whole network around it.
    fn held_against_all(&mut self, changes: Vec<Change>) -> Option<Proposal> {
        let verdict = self.bench.judge(&changes);
        let files = self.bench.written(&changes).filter(|_| verdict.passes())?;
        let mut told = verdict.told;
        if !narrow::is_whole(self.read.files(), self.bench.files()) {
            let whole = self.whole.get_or_insert_with(|| Whole::of(self.read));
            let around = whole.judge(&files, &self.asked.hop);
            if !around.passes() {
                return None;
            }
            told.extend(
                around
                    .told
                    .into_iter()
                    .filter(|one| !told.iter().any(|known| known.key == one.key))
                    .collect::<Vec<_>>(),
            );
        }
        let then = verdict.quantities.into_iter().filter_map(|now| {
            let before = self.today.quantities.iter().find(|before| before.name == now.name)?;
            let mended = before.left.is_some_and(|left| left < 0.0) && now.left.is_some_and(|left| left >= 0.0);
            let after = now.value.filter(|_| mended)?;
            Some(Then { name: now.name, limit: now.limit, before: before.value.clone(), after })
        });
        let (then, added) = (then.collect(), together::added(&changes));
        Some(Proposal { changes, added, then, told, files })
    }
}

/// The most promising of what fails, not too many about the same things.
fn carried_on(mut failing: Vec<Node>) -> Vec<Node> {
    failing.retain(|node| node.score > 0.0);
    failing.sort_by(|one, other| other.score.total_cmp(&one.score));
    let mut alike: HashMap<String, usize> = HashMap::new();
    failing.retain(|node| {
        let count = alike.entry(touched(&node.changes)).or_default();
        *count += 1;
        *count <= CARRIED_ALIKE
    });
    failing.truncate(CARRIED);
    failing
}
