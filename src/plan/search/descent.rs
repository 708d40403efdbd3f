//! From a plan to a better one by chance and by steps.

use super::problem::{Worth, degradation};
use super::random::Random;
use super::state::{Heard, State};

/// Steps after which everything is added up again.
const REFRESH: u32 = 5_000;
/// Hops that are tried to ease the worst receiver: its own and the loudest it hears.
const LOUDEST: usize = 6;

/// What a receiver counts while the search jumps: little while it hears little, and then as the power does.
fn cost(over_noise: f64) -> f64 {
    let over = over_noise / (1.0 + over_noise);
    over_noise * over * over
}

/// Jumps about, ever less readily to something worse: simulated annealing, of common knowledge. `steps` says how long.
pub(super) fn jump(state: &mut State<'_>, random: &mut Random, steps: u32) {
    let room = state.room;
    if room.moving.is_empty() || steps == 0 {
        return;
    }
    let (hottest, coldest) = temperatures(state, random);
    if hottest <= 0.0 {
        return;
    }
    let falls = libm::log(coldest / hottest);
    let mut heard = Heard::new();
    for step in 0..steps {
        if step % REFRESH == REFRESH - 1 {
            state.refresh();
        }
        let Some((hop, choice)) = any_change(state, random) else { continue };
        state.would_hear(hop, Some(choice), &mut heard);
        let more = dearer(state, &heard);
        let temperature = hottest * libm::exp(falls * f64::from(step) / f64::from(steps));
        if more <= 0.0 || random.share() < libm::exp(-more / temperature) {
            state.set(hop, Some(choice), &heard);
        }
    }
    state.refresh();
}

/// A hop and something else it may be set to.
fn any_change(state: &State<'_>, random: &mut Random) -> Option<(usize, usize)> {
    let room = state.room;
    let hop = room.moving[random.below(room.moving.len())];
    let options = room.options(hop, &state.turned);
    let choice = options[random.below(options.len())];
    (state.choice(hop) != Some(choice)).then_some((hop, choice))
}

fn dearer(state: &State<'_>, heard: &Heard) -> f64 {
    heard.iter().map(|(receiver, over)| cost(*over) - cost(state.over_noise(*receiver))).sum()
}

/// Where to begin, so that most that is worse is taken, and where to end, so that nothing is.
fn temperatures(state: &State<'_>, random: &mut Random) -> (f64, f64) {
    let mut heard = Heard::new();
    let mut more: Vec<f64> = Vec::new();
    for _ in 0..200 {
        let Some((hop, choice)) = any_change(state, random) else { continue };
        state.would_hear(hop, Some(choice), &mut heard);
        let dearer = dearer(state, &heard);
        if dearer > 0.0 {
            more.push(dearer);
        }
    }
    more.sort_by(f64::total_cmp);
    let at = |share: usize| more.get(more.len() * share / 10).copied().unwrap_or_default();
    let (hottest, least) = (at(5), at(0));
    (hottest, (least * 1e-3).max(hottest * 1e-9).min(hottest))
}

/// Eases the worst receiver for as long as a single change can, then all others without making it worse.
pub(super) fn descend(state: &mut State<'_>) {
    let mut worth = state.worth();
    for _ in 0..MOST_ROUNDS {
        while ease_worst(state, &mut worth) {}
        state.refresh();
        if !ease_others(state) {
            break;
        }
        worth = state.worth();
    }
    state.refresh();
}

/// Rounds of the steps of [`descend`]; it ends by itself long before.
const MOST_ROUNDS: u32 = 200;

fn ease_worst(state: &mut State<'_>, worth: &mut Worth) -> bool {
    let all = state.receivers().iter().copied().enumerate();
    let Some((worst, most)) = all.max_by(|(_, one), (_, other)| one.total_cmp(other)) else { return false };
    let mut best: Option<(Worth, usize, usize)> = None;
    let mut heard = Heard::new();
    for hop in culprits(state, worst) {
        for choice in state.room.options(hop, &state.turned) {
            state.would_hear(hop, Some(*choice), &mut heard);
            if heard.iter().any(|(_, over)| *over > most) {
                continue;
            }
            state.exchange(&mut heard);
            let would = state.worth();
            state.exchange(&mut heard);
            if would.is_better_than(best.as_ref().map_or(worth, |(best, ..)| best)) {
                best = Some((would, hop, *choice));
            }
        }
    }
    let Some((would, hop, choice)) = best else { return false };
    state.would_hear(hop, Some(choice), &mut heard);
    state.set(hop, Some(choice), &heard);
    *worth = would;
    true
}

/// The hop of a receiver and those it hears loudest, if they can be set to something else.
fn culprits(state: &State<'_>, receiver: usize) -> Vec<usize> {
    let room = state.room;
    let Some(to) = state.choice(receiver / 2) else { return Vec::new() };
    let incoming = room.problem.incoming[receiver].iter();
    let mut loud: Vec<(f64, usize)> = incoming
        .filter_map(|reach| {
            let from = reach.from as usize;
            Some((room.problem.power(reach, state.choice(from)?, receiver, to), from))
        })
        .filter(|(power, _)| *power > 0.0)
        .collect();
    loud.sort_by(|one, other| other.0.total_cmp(&one.0).then(one.1.cmp(&other.1)));
    let hops = std::iter::once(receiver / 2).chain(loud.into_iter().take(LOUDEST).map(|(_, hop)| hop));
    hops.filter(|hop| room.problem.hops[*hop].choices.len() > 1).collect()
}

/// Takes every change that lowers the sum and brings no receiver above the worst. True if there was one.
fn ease_others(state: &mut State<'_>) -> bool {
    let room = state.room;
    let mut heard = Heard::new();
    let mut eased = false;
    let most = state.receivers().iter().copied().fold(0.0, f64::max);
    for hop in &room.moving {
        for choice in room.options(*hop, &state.turned) {
            state.would_hear(*hop, Some(*choice), &mut heard);
            if heard.iter().any(|(_, over)| *over > most) {
                continue;
            }
            let more: f64 = heard
                .iter()
                .map(|(receiver, over)| degradation(*over) - degradation(state.over_noise(*receiver)))
                .sum();
            if more < -LEAST_GAIN {
                state.set(*hop, Some(*choice), &heard);
                eased = true;
            }
        }
    }
    if eased {
        state.refresh();
    }
    eased
}

/// Decibels of the sum that are worth a change.
const LEAST_GAIN: f64 = 1e-7;
