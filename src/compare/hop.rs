//! One hop, before less after.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

use super::became;
use super::change::{Change, FindingChange, HopChange, Outcome, Shown};
use super::edits::{Edits, Followed};
use super::found::findings;
use super::held::ByGate;
use super::hop_trees::HopTrees;
use super::judged::Judged;
use super::matching::{Here, Pair};
use super::noise::{Noise, differ};
use super::side::{HopSide, Measure};
use crate::finding::{Finding, Spot};
use crate::network::Files;
use crate::place::{DocumentId, Place};
use crate::sheet::Cause as Why;

/// What is to be said of a hop.
pub(super) enum Difference {
    /// Something.
    Shown(Box<HopChange>),
    /// It changes by less than is shown.
    Small,
    /// Nothing changes.
    None,
}

/// What the hops are compared with.
pub(super) struct With<'c, 'f> {
    pub edits: &'c Edits<'f>,
    pub gate: &'c ByGate<'c>,
    pub noise: &'c Noise,
    /// The texts of each side.
    pub files: [&'f Files; 2],
}

/// Compares a hop of both sides, by the gate of the old one. Their sheets live no longer than that.
pub(super) fn change(pair: &Pair<'_>, with: &With<'_, '_>) -> Difference {
    let sides = pair.here.map(|here| here.computed().map(|hop| hop.judge(HopSide::of)));
    let mut lines = Lines::default();
    if let [Some(old), Some(new)] = &sides {
        lines.compare(old, new, with.noise);
    }
    let before: &[Finding] = sides[0].as_ref().map_or(&[], |hop| &hop.findings);
    let after = sides[1].as_ref().map(|hop| with.gate.held(hop)).unwrap_or_default();
    let both = sides.iter().all(Option::is_some);
    let trees = [0, 1].map(|side| HopTrees::of(with.files[side], pair.here[side].computed()));
    let findings = findings(before, &after);
    let moved = findings.iter().any(|found| !found.is_as_before());
    let outcome = match (became::outcome(pair, before, &after, findings.iter().map(|found| &found.change)), both) {
        (None, _) => return Difference::None,
        (Some(Outcome::NoError | Outcome::StillFails), true) if lines.is_empty() && !moved => {
            match (&pair.renamed_from, lines.small) {
                (Some(_), _) => Outcome::Renamed,
                (None, 0) => return Difference::None,
                (None, _) => return Difference::Small,
            }
        }
        (Some(outcome), _) => outcome,
    };
    let findings = findings.into_iter().map(|found| found.placed(with.edits, &trees)).collect();
    let shown = sides[1].as_ref().or(sides[0].as_ref());
    let [network, hop] = pair.name.clone();
    let why = |here: Here<'_>| match here {
        Here::Waiting(why) => Some(why.to_owned()),
        Here::Computed(_) => became::why_not(outcome, &after),
        Here::Absent => None,
    };
    let [not_before, not_after] = [&pair.here[0], &pair.here[1]].map(|here| why(*here));
    let mut change = HopChange {
        network,
        renamed_from: pair.renamed_from.clone(),
        title: shown.map_or_else(|| hop.clone(), |shown| shown.title.clone()),
        context: shown.map(|shown| shown.context.clone()).unwrap_or_default(),
        hop,
        outcome,
        not_computed: [not_before.filter(|_| outcome != Outcome::NotJudged), not_after],
        loss: lines.quantities.iter().map(|(change, _)| change.loss).fold(0.0, f64::max),
        size: lines.all().map(|(change, _)| change.size).fold(0.0, f64::max),
        quantities: Vec::new(),
        others: Vec::new(),
        small: lines.small,
        findings,
        causes: Vec::new(),
    };
    if let [Some(old), Some(new)] = &sides {
        let now: Vec<Finding> = after.into_iter().map(|held| held.finding).collect();
        let documents = [old, new].map(|hop| Some(hop.document));
        let traced = Traced { edits: with.edits, documents, trees: &trees, followed: RefCell::default() };
        traced.put(&mut change, lines, [&old.findings, &now]);
    }
    Difference::Shown(Box::new(change))
}

/// The changed lines, each with the places of both sides.
#[derive(Default)]
struct Lines {
    quantities: Vec<(Change, [Vec<Place>; 2])>,
    others: Vec<(Change, [Vec<Place>; 2])>,
    small: usize,
}

impl Lines {
    fn is_empty(&self) -> bool {
        self.quantities.is_empty() && self.others.is_empty()
    }

    fn all(&self) -> impl Iterator<Item = &(Change, [Vec<Place>; 2])> {
        self.quantities.iter().chain(&self.others)
    }

    fn compare(&mut self, old: &HopSide, new: &HopSide, noise: &Noise) {
        let sides = [old, new];
        let judged =
            merged(new.judged.iter().map(|judged| &judged.value), old.judged.iter().map(|judged| &judged.value));
        let mut told: BTreeSet<String> = BTreeSet::new();
        for value in &judged {
            let of = sides.map(|side| side.judged.iter().find(|judged| judged.value == *value));
            let Some(words) = of[1].or(of[0]) else { continue };
            told.extend([Some(words.value.clone()), words.margin.clone(), words.least.clone()].into_iter().flatten());
            match quantity(words, of, sides, noise) {
                Weight::Shown(change, from) => self.quantities.push((*change, from)),
                Weight::Small => self.small += 1,
                Weight::None => {}
            }
        }
        let keys = merged(new.lines.iter().map(|line| &line.key), old.lines.iter().map(|line| &line.key));
        let by_key = sides.map(|side| side.lines.iter().map(|line| (&line.key, line)).collect::<BTreeMap<_, _>>());
        for key in keys.iter().filter(|key| !told.contains(*key)) {
            let both = [0, 1].map(|side| by_key[side].get(key).copied());
            match line(key, both, noise) {
                Weight::Shown(change, from) => self.others.push((*change, from)),
                Weight::Small => self.small += 1,
                Weight::None => {}
            }
        }
        self.others.sort_by(|(one, _), (other, _)| other.size.total_cmp(&one.size));
    }
}

enum Weight {
    Shown(Box<Change>, [Vec<Place>; 2]),
    Small,
    None,
}

/// The first list, then what only the second has.
fn merged<'k>(first: impl Iterator<Item = &'k String>, second: impl Iterator<Item = &'k String>) -> Vec<String> {
    let mut seen = BTreeSet::new();
    first.chain(second).filter(|key| seen.insert(*key)).cloned().collect()
}

fn shown(line: Option<&Measure>) -> Shown {
    let lost = line.and_then(|line| line.text.as_ref().err()).filter(|missing| missing.cause != Why::Judged);
    Shown {
        text: line.and_then(|line| line.text.as_ref().ok().cloned()),
        number: line.and_then(|line| line.number).map(|(number, _)| number),
        lost: lost.map(|missing| missing.reason.clone()),
    }
}

/// A line by itself.
fn line(key: &str, both: [Option<&Measure>; 2], noise: &Noise) -> Weight {
    let [before, after] = both.map(shown);
    let unit = both.iter().flatten().find_map(|line| line.number).map(|(_, unit)| unit);
    let Some(named) = both[1].or(both[0]) else { return Weight::None };
    let size = match (before.number, after.number, &before.text, &after.text) {
        (Some(old), Some(new), ..) if !differ(old, new) => return Weight::None,
        (Some(old), Some(new), ..) => {
            if !noise.passes(key, unit.unwrap_or_default(), old, new) {
                return Weight::Small;
            }
            noise.size(key, unit.unwrap_or_default(), old, new)
        }
        (_, _, old, new) if old == new && before.lost.is_some() == after.lost.is_some() => return Weight::None,
        _ => f64::INFINITY,
    };
    let change = Change {
        key: key.to_owned(),
        name: named.name.clone(),
        unit,
        values: [before, after],
        limits: [None, None],
        margins: None,
        met: [None, None],
        loss: 0.0,
        size,
        causes: Vec::new(),
    };
    Weight::Shown(Box::new(change), sources(both))
}

/// The places behind a line, and behind there being one where only one side has it.
fn sources(both: [Option<&Measure>; 2]) -> [Vec<Place>; 2] {
    let alone = both.iter().flatten().count() == 1;
    both.map(|line| {
        let places = |line: &Measure| line.from.list().into_iter().chain(line.named_at.filter(|_| alone)).collect();
        line.map(places).unwrap_or_default()
    })
}

/// A quantity with its limit and what is left.
fn quantity(words: &Judged, of: [Option<&Judged>; 2], sides: [&HopSide; 2], noise: &Noise) -> Weight {
    let find = |key: &Option<String>| key.as_ref().map(|key| sides.map(|side| side.line(key)));
    let values = sides.map(|side| side.line(&words.value));
    let (margins, least) = (find(&words.margin), find(&words.least));
    let number = |line: Option<&Measure>| line.and_then(|line| line.number).map(|(number, _)| number);
    let met = [0, 1].map(|side| match (margins, least) {
        (Some(margins), _) => number(margins[side]).map(|left| left >= 0.0),
        (None, Some(least)) => number(values[side]).zip(number(least[side])).map(|(value, least)| value >= least),
        (None, None) => None,
    });
    let parts = [Some((&words.value, values)), words.margin.as_ref().zip(margins), words.least.as_ref().zip(least)];
    let weights: Vec<Weight> = parts.into_iter().flatten().map(|(key, both)| line(key, both, noise)).collect();
    let turned = matches!(met, [Some(before), Some(after)] if before != after);
    if !turned && !weights.iter().any(|weight| matches!(weight, Weight::Shown(..))) {
        return if weights.iter().any(|weight| matches!(weight, Weight::Small)) { Weight::Small } else { Weight::None };
    }
    let size = weights.iter().map(|weight| if let Weight::Shown(change, _) = weight { change.size } else { 0.0 });
    let unit =
        |both: [Option<&Measure>; 2]| both.into_iter().flatten().find_map(|line| line.number).map(|(_, unit)| unit);
    let loss = margins.map_or(0.0, |margins| match margins.map(number) {
        [Some(before), Some(after)] if differ(before, after) => {
            let (absolute, _) = noise.of(&words.value, unit(margins).unwrap_or_default());
            (before - after) / before.abs().max(absolute).max(f64::MIN_POSITIVE)
        }
        _ => 0.0,
    });
    let from = [0, 1].map(|side| {
        let lines = [Some(values), margins, least].into_iter().flatten();
        lines.flat_map(|both| sources(both)[side].clone()).collect()
    });
    let change = Change {
        key: words.value.clone(),
        name: words.name.clone(),
        unit: unit(values),
        values: values.map(shown),
        limits: of.map(|judged| judged.and_then(|judged| judged.limit.clone())),
        margins: margins.map(|both| both.map(shown)),
        met,
        loss,
        size: size.fold(0.0, f64::max),
        causes: Vec::new(),
    };
    Weight::Shown(Box::new(change), from)
}

/// What a change of a hop is traced back by.
struct Traced<'c, 'f> {
    edits: &'c Edits<'f>,
    documents: [Option<DocumentId>; 2],
    trees: &'c [HopTrees<'f>; 2],
    followed: RefCell<Followed<'c>>,
}

impl Traced<'_, '_> {
    fn behind(&self, from: &[Vec<Place>; 2]) -> BTreeSet<usize> {
        self.edits.behind([&from[0], &from[1]], self.documents, self.trees, &mut self.followed.borrow_mut())
    }

    /// Puts the lines into the hop, each with the edits behind it.
    fn put(&self, change: &mut HopChange, lines: Lines, findings: [&[Finding]; 2]) {
        let mut all: BTreeSet<usize> = BTreeSet::new();
        let traced = |lines: Vec<(Change, [Vec<Place>; 2])>, all: &mut BTreeSet<usize>| -> Vec<(Change, Vec<usize>)> {
            let each = lines.into_iter().map(|(change, from)| {
                let found = self.behind(&from);
                all.extend(&found);
                (change, found.into_iter().collect())
            });
            each.collect()
        };
        let quantities = traced(lines.quantities, &mut all);
        let others = traced(lines.others, &mut all);
        if change.findings.iter().any(FindingChange::is_told) {
            let labels = findings.map(|findings| {
                let spots = findings.iter().flat_map(|finding| &finding.labels).map(|label| &label.spot);
                let places = spots.filter_map(|spot| match spot {
                    Spot::Field(place) | Spot::Entry(place, _) => Some(*place),
                    Spot::Bytes(..) | Spot::Path(_) => None,
                });
                let unlabelled = findings.iter().flat_map(|finding| &finding.decided_by).copied();
                places.chain(unlabelled).collect::<Vec<Place>>()
            });
            if all.is_empty() {
                all.extend(self.behind(&labels));
            }
            // A finding may also come or go because a rule was switched on or off.
            if all.is_empty() {
                all.extend(self.edits.of_severities());
            }
        }
        let numbers: BTreeMap<usize, usize> = all.iter().enumerate().map(|(local, edit)| (*edit, local)).collect();
        let finish = |list: Vec<(Change, Vec<usize>)>| {
            let local = |causes: Vec<usize>| causes.iter().filter_map(|edit| numbers.get(edit).copied()).collect();
            list.into_iter().map(|(change, causes)| Change { causes: local(causes), ..change }).collect()
        };
        change.quantities = finish(quantities);
        change.others = finish(others);
        change.causes = all.iter().map(|edit| self.edits.cause(*edit).clone()).collect();
    }
}
