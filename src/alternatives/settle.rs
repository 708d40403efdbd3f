//! A proposal made as small as it can be: no change that it does not need, no step farther than it has to go. Values move in
//! practical steps, and every step back is judged before it is taken.

use super::change::Change;
use super::trial::Bench;

/// The smallest that still passes of some changes that do.
pub(super) fn settled(bench: &Bench, changes: Vec<Change>) -> Vec<Change> {
    let mut settled = needed(bench, changes);
    for number in 0..settled.len() {
        settled = brought_back(bench, &settled, number);
    }
    settled
}

/// Without the changes it passes without.
fn needed(bench: &Bench, mut changes: Vec<Change>) -> Vec<Change> {
    let mut number = 0;
    while changes.len() > 1 && number < changes.len() {
        let mut without = changes.clone();
        without.remove(number);
        if bench.judge(&without).passes() {
            changes = without;
        } else {
            number += 1;
        }
    }
    changes
}

/// With a change of values on a line as near to today's as it passes: all of its pieces together, then each by itself.
fn brought_back(bench: &Bench, changes: &[Change], number: usize) -> Vec<Change> {
    let with = |change: Change| {
        let mut all = changes.to_vec();
        all[number] = change;
        all
    };
    let passes = |change: &Change| bench.judge(&with(change.clone())).passes();
    let whole = changes[number].clone();
    let mut least = fewest(whole.steps(), |steps| whole.at(steps), &passes).unwrap_or(whole);
    if least.pieces.len() > 1 {
        for piece in 0..least.pieces.len() {
            let Some(steps) = least.pieces[piece].scale.map(|scale| scale.steps()) else { continue };
            let now = least.clone();
            if let Some(fewer) = fewest(steps, |steps| now.with_piece_at(piece, steps), &passes) {
                least = fewer;
            }
        }
    }
    with(least)
}

/// The fewest of so many steps that pass, taken to pass from there on; none if no fewer do.
fn fewest(all: u32, made: impl Fn(u32) -> Change, passes: &dyn Fn(&Change) -> bool) -> Option<Change> {
    let (mut fails, mut good, mut found) = (0, all, None);
    while good - fails > 1 {
        let middle = u32::midpoint(fails, good);
        let change = made(middle);
        if passes(&change) {
            (good, found) = (middle, Some(change));
        } else {
            fails = middle;
        }
    }
    found
}
