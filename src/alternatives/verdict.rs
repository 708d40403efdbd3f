//! What a trial came to: what still counts against the hop, what is new, what is worse elsewhere.

use std::collections::HashMap;

use crate::compare::Quantity;
use crate::finding::rule::{Rule, Severity};
use crate::finding::{Finding, Measured, Spot};
use crate::place::Step;
use crate::spec::EndName;

/// Something that is found, free of the library it was found in.
#[derive(Debug, Clone)]
pub struct Found {
    /// The rule.
    pub rule: &'static Rule,
    /// Severity after the settings of the network.
    pub severity: Severity,
    /// The hop it is about, if it is about one.
    pub hop: Option<String>,
    /// The end, if it is about one.
    pub end: Option<EndName>,
    /// What is said.
    pub message: String,
    /// The run of that end, if it is about one.
    pub(super) run: Option<usize>,
    /// The value that is wrong, where the rule compares one.
    pub(super) measured: Option<Measured>,
    /// What it is known by.
    pub(super) key: String,
}

impl Found {
    /// Of a finding that has its fingerprint.
    pub(super) fn of(finding: &Finding) -> Self {
        Self {
            rule: finding.rule,
            severity: finding.severity,
            hop: finding.hop.clone(),
            end: finding.end,
            message: finding.message.clone(),
            run: run_of(finding),
            measured: finding.measured.clone(),
            key: finding.fingerprint.first().to_string(),
        }
    }

    /// What it has in common with what the same rule says of the same end of the same hop; of no hop, what it is known by.
    fn sort(&self) -> String {
        let end = self.end.map_or("", EndName::letter);
        self.hop.as_ref().map_or_else(|| self.key.clone(), |hop| format!("{} {hop} {end}", self.rule.name))
    }

    /// Whether it is about what was found on a visit. A hop that is changed has to be visited again: that its records are of
    /// the design before follows from any change and speaks against none.
    pub(super) fn is_of_a_visit(&self) -> bool {
        self.rule.family == "record"
    }
}

/// The number of the run that a finding points into.
fn run_of(finding: &Finding) -> Option<usize> {
    finding.labels.iter().find_map(|label| {
        let Spot::Field(place) = &label.spot else { return None };
        let mut steps = place.steps();
        match (steps.next()?, steps.next()?, steps.next()?, steps.next()?) {
            (Step::Key("ends"), Step::Key(_), Step::Key("runs"), Step::Index(number)) => Some(number),
            _ => None,
        }
    })
}

/// What is found in some state: by what it is known by, each with its worst value.
#[derive(Debug, Default)]
pub(super) struct Known {
    each: HashMap<String, Option<Measured>>,
    /// By rule, hop and end: how many there are, and the worst of them.
    alike: HashMap<String, (usize, Option<Measured>)>,
}

impl Known {
    pub(super) fn of(found: &[Found]) -> Self {
        let mut known = Self::default();
        for one in found {
            let worst = known.each.entry(one.key.clone()).or_insert_with(|| one.measured.clone());
            *worst = worse(worst.take(), one.measured.as_ref());
            let (count, worst) = known.alike.entry(one.sort()).or_default();
            *count += 1;
            *worst = worse(worst.take(), one.measured.as_ref());
        }
        known
    }

    /// Whether something is not in it.
    pub(super) fn lacks(&self, found: &Found) -> bool {
        !self.each.contains_key(&found.key)
    }

    /// Whether something is not in it, or is worse than in it.
    pub(super) fn is_passed_by(&self, found: &Found) -> bool {
        self.each.get(&found.key).is_none_or(|before| is_worse(found.measured.as_ref(), before.as_ref()))
    }

    /// What of some other state is not in it or is worse. What a rule says of the same end of the same hop is no news where
    /// there is no more of it and none is worse than the worst: with the strongest of several senders gone, a rule that names
    /// the strongest names the next.
    pub(super) fn news_of(&self, found: Vec<Found>) -> Vec<Found> {
        let other = Self::of(&found);
        let is_news = |one: &Found| {
            let (before, now) = (self.alike.get(&one.sort()), other.alike.get(&one.sort()));
            let (Some((before, worst)), Some((now, _))) = (before, now) else { return true };
            now > before || is_worse(one.measured.as_ref(), worst.as_ref())
        };
        found.into_iter().filter(|one| self.is_passed_by(one) && is_news(one)).collect()
    }
}

/// The worse of two values.
fn worse(one: Option<Measured>, other: Option<&Measured>) -> Option<Measured> {
    match (&one, other) {
        (Some(before), Some(measured)) if measured.is_worse_than(before.value) => Some(measured.clone()),
        (None, Some(measured)) => Some(measured.clone()),
        _ => one,
    }
}

/// Whether a value is worse than another. Where there was one to compare and now there is none, nobody knows that it is no
/// worse.
fn is_worse(now: Option<&Measured>, before: Option<&Measured>) -> bool {
    match (before, now) {
        (Some(before), Some(now)) => now.is_worse_than(before.value),
        (Some(_), None) => true,
        (None, _) => false,
    }
}

/// What a trial came to.
#[derive(Debug, Clone, Default)]
pub(super) struct Verdict {
    /// What counts against the hop, at the level that fails; but for what no change can touch.
    pub(super) failing: Vec<Found>,
    /// Warnings about the hop that are not there today.
    pub(super) fresh: Vec<Found>,
    /// What is new or worse elsewhere. Looked for only where the hop itself passes.
    pub(super) elsewhere: Vec<Found>,
    /// What follows and speaks against nothing: advice, records of the design before, warnings that get worse.
    pub(super) told: Vec<Found>,
    /// What has a limit and how it stands, of a hop that passes.
    pub(super) quantities: Vec<Quantity>,
    /// Whether there was a hop to judge at all.
    pub(super) is_judged: bool,
}

impl Verdict {
    /// Whether it may be offered.
    pub(super) fn passes(&self) -> bool {
        self.is_judged && self.left().next().is_none()
    }

    /// What speaks against it.
    pub(super) fn left(&self) -> impl Iterator<Item = &Found> {
        self.failing.iter().chain(&self.fresh).chain(&self.elsewhere)
    }
}
