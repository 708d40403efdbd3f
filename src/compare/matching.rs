//! Which hop of one side is which of the other.

use std::collections::hash_map::DefaultHasher;
use std::collections::{BTreeMap, BTreeSet};
use std::hash::{Hash, Hasher};

use rayon::prelude::*;

use super::side::HopSide;
use super::state::{State, name_of};
use crate::verdict::OpenHop;

/// A hop as one side has it.
#[derive(Clone, Copy)]
pub(super) enum Here<'s> {
    /// It has a sheet.
    Computed(OpenHop<'s>),
    /// It is there, or may be, and cannot be computed.
    Waiting(&'s str),
    /// It is not there.
    Absent,
}

impl<'s> Here<'s> {
    /// The hop, if it has a sheet.
    pub(super) fn computed(self) -> Option<OpenHop<'s>> {
        match self {
            Self::Computed(hop) => Some(hop),
            Self::Waiting(_) | Self::Absent => None,
        }
    }
}

/// A hop of either side or both.
pub(super) struct Pair<'s> {
    /// Network and id, those of the new side where it has it.
    pub name: [String; 2],
    /// The id it had, if that is another.
    pub renamed_from: Option<String>,
    /// Each side.
    pub here: [Here<'s>; 2],
}

impl Pair<'_> {
    /// Whether neither side can compute it.
    pub(super) fn is_never_computed(&self) -> bool {
        self.here.iter().all(|here| here.computed().is_none())
    }
}

type Hops<'s> = BTreeMap<[String; 2], Here<'s>>;

/// Matches by network and id, then by id alone, then by equal numbers. What is left is new or gone, unless the file it
/// would be in cannot be read.
pub(super) fn pairs<'s>(old: &'s State<'s>, new: &'s State<'s>) -> Vec<Pair<'s>> {
    let (mut before, mut after) = (hops(old), hops(new));
    let mut pairs = Vec::new();
    let both: Vec<[String; 2]> = before.keys().filter(|name| after.contains_key(*name)).cloned().collect();
    for name in both {
        pairs.push(take(&mut before, &mut after, &name, name.clone()));
    }
    for (name, other) in same_id(&before, &after) {
        pairs.push(take(&mut before, &mut after, &name, other));
    }
    for (name, other) in same_numbers(&before, &after) {
        let from = name[1].clone();
        let pair = take(&mut before, &mut after, &name, other);
        pairs.push(Pair { renamed_from: Some(from), ..pair });
    }
    for (name, here) in before {
        let there = unread(new, old, here);
        pairs.push(Pair { name, renamed_from: None, here: [here, there] });
    }
    for (name, here) in after {
        let there = unread(old, new, here);
        pairs.push(Pair { name, renamed_from: None, here: [there, here] });
    }
    pairs
}

fn take<'s>(before: &mut Hops<'s>, after: &mut Hops<'s>, name: &[String; 2], other: [String; 2]) -> Pair<'s> {
    let here = [before.remove(name), after.remove(&other)].map(|here| here.unwrap_or(Here::Absent));
    Pair { name: other, renamed_from: None, here }
}

fn hops<'s>(state: &'s State<'s>) -> Hops<'s> {
    let computed = state.hops.iter().map(|hop| (name_of(*hop), Here::Computed(*hop)));
    let waiting = state.waiting.iter().map(|hop| (hop.name.clone(), Here::Waiting(&hop.why)));
    waiting.chain(computed).collect()
}

/// Hops whose network was renamed, or cannot be read on one side.
fn same_id(before: &Hops<'_>, after: &Hops<'_>) -> Vec<([String; 2], [String; 2])> {
    let [old, new] = [before, after].map(by_id);
    let pair = |(id, names): (&&str, &Vec<&[String; 2]>)| match (names.as_slice(), new.get(id)?.as_slice()) {
        ([name], [other]) => Some(((*name).clone(), (*other).clone())),
        _ => None,
    };
    let mut found: Vec<([String; 2], [String; 2])> = old.iter().filter_map(pair).collect();
    found.sort();
    found
}

fn by_id<'h>(hops: &'h Hops<'_>) -> BTreeMap<&'h str, Vec<&'h [String; 2]>> {
    let mut found: BTreeMap<&str, Vec<&[String; 2]>> = BTreeMap::new();
    for name in hops.keys() {
        found.entry(&name[1]).or_default().push(name);
    }
    found
}

/// A hop that another one may be now, by its name.
type Candidate<'h> = (&'h [String; 2], OpenHop<'h>);

/// Hops with another id and the same numbers throughout.
fn same_numbers(before: &Hops<'_>, after: &Hops<'_>) -> Vec<([String; 2], [String; 2])> {
    let computed = |hops: &Hops<'_>| hops.values().any(|here| here.computed().is_some());
    if !computed(before) || !computed(after) {
        return Vec::new();
    }
    let mut by_digest: BTreeMap<(&str, u64), Vec<Candidate<'_>>> = BTreeMap::new();
    for (name, hop, digest) in digests(after) {
        by_digest.entry((&name[0], digest)).or_default().push((name, hop));
    }
    let mut taken: BTreeSet<&[String; 2]> = BTreeSet::new();
    let mut found = Vec::new();
    for (name, hop, digest) in digests(before) {
        let alike = by_digest.get(&(name[0].as_str(), digest)).map(Vec::as_slice).unwrap_or_default();
        let mut free = alike.iter().filter(|(other, _)| !taken.contains(other)).peekable();
        if free.peek().is_none() {
            continue;
        }
        let old = hop.judge(HopSide::of);
        if let Some((other, _)) = free.find(|(_, new)| same_sheet(&old, &new.judge(HopSide::of))) {
            taken.insert(other);
            found.push((name.clone(), (*other).clone()));
        }
    }
    found
}

/// The hops that have a sheet, each with a number that is the same where all its numbers are, in order of name.
fn digests<'h, 's>(hops: &'h Hops<'s>) -> Vec<(&'h [String; 2], OpenHop<'s>, u64)> {
    let computed: Vec<(&[String; 2], OpenHop<'_>)> =
        hops.iter().filter_map(|(name, here)| Some((name, here.computed()?))).collect();
    computed
        .par_iter()
        .map(|(name, hop)| (*name, *hop, hop.judge(|sheet, _| digest(&HopSide::of(sheet, &[])))))
        .collect()
}

fn digest(hop: &HopSide) -> u64 {
    let mut hasher = DefaultHasher::new();
    for line in &hop.lines {
        line.key.hash(&mut hasher);
        match line.number {
            // Zero has two signs and is one number.
            Some((number, _)) => (number + 0.0).to_bits().hash(&mut hasher),
            None => line.text.as_ref().ok().map(ToString::to_string).hash(&mut hasher),
        }
    }
    hasher.finish()
}

fn same_sheet(old: &HopSide, new: &HopSide) -> bool {
    old.lines.len() == new.lines.len()
        && old.lines.iter().zip(&new.lines).all(|(old, new)| {
            old.key == new.key
                && old.number == new.number
                && (old.number.is_some() || old.text.as_ref().ok() == new.text.as_ref().ok())
        })
}

/// Whether the side that lacks a hop has its file and cannot read it.
fn unread<'s>(lacks: &'s State<'s>, has: &State<'_>, here: Here<'_>) -> Here<'s> {
    let found = here.computed().and_then(|hop| lacks.unread(hop, has.side));
    found.map_or(Here::Absent, |finding| Here::Waiting(&finding.message))
}
