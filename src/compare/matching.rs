//! Which hop of one side is which of the other.

use std::collections::{BTreeMap, BTreeSet};

use super::side::{HopSide, Side};

/// A hop as one side has it.
#[derive(Debug, Clone, Copy)]
pub(super) enum Here<'s> {
    /// With its sheet.
    Computed(&'s HopSide),
    /// It is there, or may be, and cannot be computed.
    Waiting(&'s str),
    /// It is not there.
    Absent,
}

/// A hop of either side or both.
#[derive(Debug)]
pub(super) struct Pair<'s> {
    /// Network and id, those of the new side where it has it.
    pub name: [String; 2],
    /// The id it had, if that is another.
    pub renamed_from: Option<String>,
    /// Each side.
    pub here: [Here<'s>; 2],
    /// The sheet of the old side.
    pub old: Option<&'s HopSide>,
    /// The sheet of the new side.
    pub new: Option<&'s HopSide>,
}

impl<'s> Pair<'s> {
    fn new(name: [String; 2], renamed_from: Option<String>, here: [Here<'s>; 2]) -> Self {
        let [old, new] = here.map(|here| match here {
            Here::Computed(hop) => Some(hop),
            Here::Waiting(_) | Here::Absent => None,
        });
        Self { name, renamed_from, here, old, new }
    }
}

type Hops<'s> = BTreeMap<[String; 2], Here<'s>>;

/// Matches by network and id, then by id alone, then by equal numbers. What is left is new or gone, unless the file it
/// would be in cannot be read.
pub(super) fn pairs<'s>(old: &'s Side, new: &'s Side) -> Vec<Pair<'s>> {
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
        pairs.push(Pair::new(name, None, [here, there]));
    }
    for (name, here) in after {
        let there = unread(old, new, here);
        pairs.push(Pair::new(name, None, [there, here]));
    }
    pairs
}

fn take<'s>(before: &mut Hops<'s>, after: &mut Hops<'s>, name: &[String; 2], other: [String; 2]) -> Pair<'s> {
    let here = [before.remove(name), after.remove(&other)].map(|here| here.unwrap_or(Here::Absent));
    Pair::new(other, None, here)
}

fn hops(side: &Side) -> Hops<'_> {
    let computed = side.hops.iter().map(|hop| ([hop.network.clone(), hop.hop.clone()], Here::Computed(hop)));
    let waiting = side.waiting.iter().map(|hop| ([hop.network.clone(), hop.hop.clone()], Here::Waiting(&hop.why)));
    waiting.chain(computed).collect()
}

/// Hops whose network was renamed, or cannot be read on one side.
fn same_id(before: &Hops<'_>, after: &Hops<'_>) -> Vec<([String; 2], [String; 2])> {
    let only = |hops: &Hops<'_>, id: &str| hops.keys().filter(|[_, hop]| hop == id).count() == 1;
    let pair = |name: &[String; 2]| {
        let other = after.keys().find(|[_, id]| *id == name[1])?;
        (only(before, &name[1]) && only(after, &name[1])).then(|| (name.clone(), other.clone()))
    };
    before.keys().filter_map(pair).collect()
}

/// Hops with another id and the same numbers throughout.
fn same_numbers(before: &Hops<'_>, after: &Hops<'_>) -> Vec<([String; 2], [String; 2])> {
    let mut taken: BTreeSet<&[String; 2]> = BTreeSet::new();
    let mut found = Vec::new();
    for (name, here) in before {
        let Here::Computed(old) = here else { continue };
        let same = after.iter().find(|(other, here)| match here {
            Here::Computed(new) => name[0] == other[0] && !taken.contains(other) && same_sheet(old, new),
            Here::Waiting(_) | Here::Absent => false,
        });
        if let Some((other, _)) = same {
            taken.insert(other);
            found.push((name.clone(), other.clone()));
        }
    }
    found
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
fn unread<'s>(lacks: &'s Side, has: &Side, here: Here<'_>) -> Here<'s> {
    let Here::Computed(hop) = here else { return Here::Absent };
    let inside = has.inside(hop.document);
    match inside.and_then(|inside| lacks.unread(&inside)) {
        Some(finding) => Here::Waiting(&finding.message),
        None => Here::Absent,
    }
}
