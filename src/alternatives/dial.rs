//! A value between two: today's is too little and the one that was tried is too much, such as a power that clears the margin and
//! overloads the far receiver.

use super::change::Change;
use super::reach::{Turn, levers};
use super::trial::Bench;
use super::verdict::Verdict;

/// The most trials that one search between two values takes.
pub(super) const MOST_TRIALS: usize = 7;

/// The change of values on a line among some, by its number; the last of them if there are several.
fn on_a_line(changes: &[Change]) -> Option<usize> {
    changes.iter().rposition(|change| change.steps() > 1)
}

/// Which way what is found would have the values of a change moved: on in the way they went, or back.
fn asks(change: &Change, verdict: &Verdict, hop: &str) -> (bool, bool) {
    let up = change.pieces.iter().filter_map(|piece| piece.scale).any(|scale| scale.then > scale.today);
    let (mut on, mut back) = (false, false);
    for found in verdict.left() {
        for (_, turn) in levers(found.rule.name).iter().filter(|(lever, _)| *lever == change.lever) {
            // Whatever is found about another hop was not there before.
            match (turn, up) {
                _ if found.hop.as_deref() != Some(hop) => back = true,
                (Turn::Up, true) | (Turn::Down, false) => on = true,
                _ => back = true,
            }
        }
    }
    (on, back)
}

/// Whether a trial fails for nothing but that it goes too far.
pub(super) fn went_too_far(changes: &[Change], verdict: &Verdict, hop: &str) -> bool {
    let Some(number) = on_a_line(changes).filter(|_| verdict.is_judged && !verdict.passes()) else { return false };
    asks(&changes[number], verdict, hop) == (false, true)
}

/// Values between today's and those of a trial that went too far, at which all passes; none if there are none.
pub(super) fn between(bench: &Bench, changes: &[Change], hop: &str) -> Option<(Vec<Change>, Verdict)> {
    let number = on_a_line(changes)?;
    let whole = &changes[number];
    let (mut little, mut much) = (0, whole.steps());
    for _ in 0..MOST_TRIALS {
        if much - little < 2 {
            return None;
        }
        let middle = u32::midpoint(little, much);
        let mut tried = changes.to_vec();
        tried[number] = whole.at(middle);
        let verdict = bench.judge(&tried);
        if verdict.passes() {
            return Some((tried, verdict));
        }
        match asks(&tried[number], &verdict, hop) {
            (true, false) => little = middle,
            (false, true) => much = middle,
            // Too much and too little at once, or something that these values do not touch.
            _ => return None,
        }
    }
    None
}
