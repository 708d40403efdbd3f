//! The best of all settings of many hops.
//!
//! A [`Problem`] says of every hop what it may be set to and of every two what they bring each other; [`best`] finds the
//! settings that are best: least of all the greatest degradation of any receiver, then the sum of all. Sites keep to one half
//! of a band. A small problem is solved for certain, for what cannot become the best is passed over by a bound; a large one
//! from several beginnings, by chance that is the same in every run, whatever the number of threads.

mod descent;
mod exact;
mod halves;
mod problem;
mod random;
mod state;

use rayon::prelude::*;

pub use halves::NoPlan;
pub use problem::{Candidate, Choice, End, Ether, Problem, Worth};

use random::Random;
use state::{Heard, Room, State};

/// Beginnings of a search by chance.
const BEGINNINGS: u64 = 4;
/// Steps of each for every hop that may change.
const STEPS: usize = 4_000;
/// Powers that each looks up at most: a large network gets fewer steps, so that it ends within a minute.
const LOOKED_UP: usize = 60_000_000;
/// Receivers looked at to show that nothing is better.
const LOOKED_AT: usize = 10_000_000;
/// Decibels of the sum for which no hop is changed.
const NOT_WORTH_IT: f64 = 1e-6;

/// A frequency plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// What each hop is set to.
    pub choices: Vec<usize>,
    /// What that comes to.
    pub worth: Worth,
    /// Whether it was shown that nothing is better.
    pub proven: bool,
}

/// What the settings of today come to. None if a hop has none that is a choice.
#[must_use]
pub fn today(problem: &Problem) -> Option<Worth> {
    let now: Option<Vec<usize>> = problem.hops.iter().map(|hop| hop.now).collect();
    now.map(|now| problem.worth(&now))
}

/// The best settings found. Never worse than those of today, where these keep each site to one half; and as those are wherever
/// nothing is gained by a change.
///
/// # Errors
/// The sites cannot be told into halves.
pub fn best(problem: &Problem) -> Result<Plan, NoPlan> {
    let room = Room::of(problem)?;
    let today = as_today(&room);
    let mut best = by_chance(&room, today.as_ref());
    let (found, proven) = exact::search(&room, best.take(), LOOKED_AT);
    let mut state = found.map_or_else(|| State::empty(&room, room.today()).fill(), |(_, state)| state);
    leave_be(&mut state);
    let choices = state.all().expect("every hop has a choice, and `fill` gives it one");
    let worth = problem.worth(&choices);
    Ok(Plan { choices, worth, proven })
}

/// The settings of today, if every hop has one that the halves allow.
fn as_today<'r>(room: &'r Room<'r>) -> Option<State<'r>> {
    let mut state = State::empty(room, room.today());
    let mut heard = Heard::new();
    for hop in &room.moving {
        let now = room.problem.hops[*hop].now?;
        if !room.options(*hop, &state.turned).contains(&now) {
            return None;
        }
        state.would_hear(*hop, Some(now), &mut heard);
        state.set(*hop, Some(now), &heard);
    }
    state.refresh();
    Some(state)
}

/// The best of several beginnings.
fn by_chance<'r>(room: &'r Room<'r>, today: Option<&State<'r>>) -> Option<(Worth, State<'r>)> {
    let steps = steps(room);
    let ends: Vec<State<'r>> = (0..BEGINNINGS)
        .into_par_iter()
        .map(|number| {
            let mut random = Random::seeded(number);
            let mut state = beginning(room, today, number, &mut random);
            descent::jump(&mut state, &mut random, steps);
            descent::descend(&mut state);
            state
        })
        .collect();
    let all = today.cloned().into_iter().chain(ends).map(|state| (state.worth(), state));
    all.reduce(|best, next| if next.0.is_better_than(&best.0) { next } else { best })
}

/// How long to search by chance.
fn steps(room: &Room<'_>) -> u32 {
    let powers: usize = room.moving.iter().map(|hop| room.problem.lookups(*hop)).sum();
    let each = powers / room.moving.len().max(1) + 1;
    u32::try_from((STEPS * room.moving.len()).min(LOOKED_UP / each)).unwrap_or(u32::MAX)
}

/// Today's settings, then the cheapest hop by hop, then the same with parts turned over.
fn beginning<'r>(room: &'r Room<'r>, today: Option<&State<'r>>, number: u64, random: &mut Random) -> State<'r> {
    if let (0, Some(today)) = (number, today) {
        return today.clone();
    }
    let mut turned = room.today();
    if number > 1 {
        for (turned, held) in turned.iter_mut().zip(&room.halves.held) {
            *turned = held.unwrap_or_else(|| random.below(2) == 1);
        }
    }
    State::empty(room, turned).fill()
}

/// Changes hops no more than it takes: back to what they are today, or at least to its channel or its polarisation, where
/// nothing is lost by it.
fn leave_be(state: &mut State<'_>) {
    let mut heard = Heard::new();
    let mut worth = state.worth();
    for hop in &state.room.moving {
        let (Some(now), Some(chosen)) = (state.room.problem.hops[*hop].now, state.choice(*hop)) else { continue };
        let apart = |choice: usize| differences(&state.room.problem.hops[*hop].choices, now, choice);
        let options = state.room.options(*hop, &state.turned).iter().copied();
        let mut nearer: Vec<usize> = options.filter(|choice| apart(*choice) < apart(chosen)).collect();
        nearer.sort_by_key(|choice| apart(*choice));
        for choice in nearer {
            state.would_hear(*hop, Some(choice), &mut heard);
            state.exchange(&mut heard);
            let would = state.worth();
            state.exchange(&mut heard);
            if would.greatest <= worth.greatest && would.sum.0 <= worth.sum.0 + NOT_WORTH_IT {
                state.set(*hop, Some(choice), &heard);
                worth = state.worth();
                break;
            }
        }
    }
}

/// How much has to be set to get from one choice to another: halves are more than channels, and these more than polarisations.
fn differences(choices: &[Choice], one: usize, other: usize) -> u8 {
    let (one, other) = (&choices[one], &choices[other]);
    let halves = one.first_is_upper() != other.first_is_upper();
    let (channels, polarisations) = (one.sent != other.sent, one.polarisation != other.polarisation);
    4 * u8::from(halves) + 2 * u8::from(channels) + u8::from(polarisations)
}
