//! Hops that change for one reason, told together: identical differences read one by one are not read.

use std::collections::BTreeMap;

use super::cause::Cause;
use super::change::{Change, HopChange, Outcome};

/// From how many hops on a reason is told once for all of them.
const FEWEST: usize = 3;

/// Hops with the same edits behind all that changes in them.
#[derive(Debug, Clone)]
pub struct Group {
    /// The edits, in order of file and line.
    pub causes: Vec<Cause>,
    /// Its hops, by their places in the list of the comparison: worst first.
    pub hops: Vec<usize>,
    /// How many of each outcome, worst first.
    pub outcomes: Vec<(Outcome, usize)>,
    /// What changes in the quantities they are decided by, in the order of the first hop that has it.
    pub ranges: Vec<Range>,
}

/// One quantity over the hops of a group.
#[derive(Debug, Clone)]
pub struct Range {
    /// What it is.
    pub name: String,
    /// Its base unit.
    pub unit: &'static str,
    /// In how many hops it changes.
    pub hops: usize,
    /// The least and the greatest change, in the base unit.
    pub change: [f64; 2],
    /// What is left where the least is, in the base unit, and the hop.
    pub least: Option<(f64, String)>,
}

/// The groups among hops that are in order, the largest first; a hop is in one at most.
pub(super) fn of(hops: &[HopChange]) -> Vec<Group> {
    let mut by_causes: BTreeMap<Vec<String>, Vec<usize>> = BTreeMap::new();
    for (number, hop) in hops.iter().enumerate().filter(|(_, hop)| !hop.causes.is_empty()) {
        by_causes.entry(hop.causes.iter().map(key).collect()).or_default().push(number);
    }
    let mut groups: Vec<Group> =
        by_causes.into_values().filter(|members| members.len() >= FEWEST).map(|members| group(hops, members)).collect();
    groups.sort_by_key(|group| (std::cmp::Reverse(group.hops.len()), group.hops[0]));
    groups
}

/// What an edit is known by.
fn key(cause: &Cause) -> String {
    let Cause { path, line, route, before, after, gone, .. } = cause;
    format!("{path}\u{0}{line}\u{0}{route}\u{0}{before:?}\u{0}{after:?}\u{0}{gone}")
}

fn group(hops: &[HopChange], members: Vec<usize>) -> Group {
    let mut outcomes: BTreeMap<Outcome, usize> = BTreeMap::new();
    let mut ranges: Vec<Range> = Vec::new();
    for number in &members {
        let hop = &hops[*number];
        *outcomes.entry(hop.outcome).or_default() += 1;
        for change in &hop.quantities {
            take_in(&mut ranges, change, &hop.hop);
        }
    }
    Group { causes: hops[members[0]].causes.clone(), hops: members, outcomes: outcomes.into_iter().collect(), ranges }
}

fn take_in(ranges: &mut Vec<Range>, change: &Change, hop: &str) {
    let (Some(by), Some(unit)) = (change.difference(), change.unit) else { return };
    let left = change.margins.as_ref().and_then(|margins| margins[1].number);
    let known = ranges.iter_mut().find(|range| range.name == change.name && range.unit == unit);
    match known {
        Some(range) => {
            range.hops += 1;
            range.change = [range.change[0].min(by), range.change[1].max(by)];
            if let Some(left) = left.filter(|left| range.least.as_ref().is_none_or(|(least, _)| left < least)) {
                range.least = Some((left, hop.to_owned()));
            }
        }
        None => ranges.push(Range {
            name: change.name.clone(),
            unit,
            hops: 1,
            change: [by, by],
            least: left.map(|left| (left, hop.to_owned())),
        }),
    }
}
