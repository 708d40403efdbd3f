//! Every plan tried that could still be the best.
//!
//! A further sender never lowers what a receiver hears. So what the hops placed so far come to is the least that all of
//! them can come to, and where that is no better than the best plan known nothing below needs to be looked at.

use super::problem::Worth;
use super::state::{Heard, Room, State};

/// The search, from one placed hop to the next.
struct Search<'r> {
    room: &'r Room<'r>,
    state: State<'r>,
    /// Of each part how it lies; none while none of its hops is placed.
    lies: Vec<Option<bool>>,
    best: Option<(Worth, State<'r>)>,
    /// How many receivers may still be looked at before it gives up.
    left: usize,
}

/// The best plan there is, if that can be shown by looking at receivers no more than so many times; else what was found until
/// then, if it is better than what was known.
pub(super) fn search<'r>(
    room: &'r Room<'r>,
    known: Option<(Worth, State<'r>)>,
    most: usize,
) -> (Option<(Worth, State<'r>)>, bool) {
    let turned = room.halves.held.iter().map(|held| held.unwrap_or_default()).collect();
    let state = State::empty(room, turned);
    let mut search = Search { room, state, lies: room.halves.held.clone(), best: known, left: most };
    let done = search.place(0);
    (search.best, done)
}

impl Search<'_> {
    /// Places the hops from a number on in every way. False if it gave up.
    fn place(&mut self, number: usize) -> bool {
        let Some(hop) = self.room.moving.get(number).copied() else {
            self.state.refresh();
            let worth = self.state.worth();
            if self.best.as_ref().is_none_or(|(best, _)| worth.is_better_than(best)) {
                self.best = Some((worth, self.state.clone()));
            }
            return true;
        };
        let Some((part, _)) = self.room.halves.place[hop] else { return self.choose(number, hop) };
        if self.lies[part].is_some() {
            return self.choose(number, hop);
        }
        let done = [false, true].into_iter().all(|turned| {
            self.lies[part] = Some(turned);
            self.state.turned[part] = turned;
            self.choose(number, hop)
        });
        self.lies[part] = None;
        done
    }

    /// Tries a hop in every way that its part leaves, the cheapest first.
    fn choose(&mut self, number: usize, hop: usize) -> bool {
        let mut heard = Heard::new();
        let mut options: Vec<(Worth, usize)> = Vec::new();
        let choices = self.room.options(hop, &self.state.turned);
        let looked_at = choices.len() * self.state.receivers().len();
        if self.left < looked_at {
            return false;
        }
        self.left -= looked_at;
        for choice in choices {
            self.state.would_hear(hop, Some(*choice), &mut heard);
            let worth = self.with(&mut heard);
            options.push((worth, *choice));
        }
        options.sort_by(|(one, _), (other, _)| {
            (one.greatest.0, one.sum.0)
                .partial_cmp(&(other.greatest.0, other.sum.0))
                .unwrap_or(std::cmp::Ordering::Equal)
        });
        for (least, choice) in options {
            if self.best.as_ref().is_some_and(|(best, _)| !least.is_better_than(best)) {
                continue;
            }
            self.state.would_hear(hop, Some(choice), &mut heard);
            let before: Heard =
                heard.iter().map(|(receiver, _)| (*receiver, self.state.over_noise(*receiver))).collect();
            self.state.set(hop, Some(choice), &heard);
            let done = self.place(number + 1);
            self.state.set(hop, None, &before);
            if !done {
                return false;
            }
        }
        true
    }

    /// What it would come to with some receivers hearing something else.
    fn with(&mut self, heard: &mut Heard) -> Worth {
        self.state.exchange(heard);
        let worth = self.state.worth();
        self.state.exchange(heard);
        worth
    }
}
