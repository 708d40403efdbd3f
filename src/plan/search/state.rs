//! Hops and what is chosen for each, with what every receiver hears kept up to date.

use super::halves::{Halves, NoPlan};
use super::problem::{Problem, Worth, degradation};

/// What may be chosen.
#[derive(Debug)]
pub(super) struct Room<'p> {
    pub(super) problem: &'p Problem,
    pub(super) halves: Halves,
    /// Choices of each hop while its part is not turned over, and while it is.
    options: Vec<[Vec<usize>; 2]>,
    /// Hops with more than one choice, the hardest to place first.
    pub(super) moving: Vec<usize>,
}

impl<'p> Room<'p> {
    pub(super) fn of(problem: &'p Problem) -> Result<Self, NoPlan> {
        let halves = Halves::of(&problem.hops)?;
        let fits = |hop: usize, turned: bool| {
            let all = problem.hops[hop].choices.iter().enumerate();
            let fitting = all.filter(|(_, choice)| match (halves.place[hop], choice.first_is_upper()) {
                (Some((_, upper)), Some(first)) => first == (upper != turned),
                _ => true,
            });
            fitting.map(|(number, _)| number).collect()
        };
        let options = (0..problem.hops.len()).map(|hop| [fits(hop, false), fits(hop, true)]).collect();
        let mut moving: Vec<(f64, usize)> = (0..problem.hops.len())
            .filter(|hop| problem.hops[*hop].choices.len() > 1)
            .map(|hop| (problem.hardness(hop), hop))
            .collect();
        moving.sort_by(|one, other| other.0.total_cmp(&one.0).then(one.1.cmp(&other.1)));
        Ok(Self { problem, halves, options, moving: moving.into_iter().map(|(_, hop)| hop).collect() })
    }

    /// What a hop may be set to.
    pub(super) fn options(&self, hop: usize, turned: &[bool]) -> &[usize] {
        let over = self.halves.place[hop].is_some_and(|(part, _)| turned[part]);
        &self.options[hop][usize::from(over)]
    }

    /// How each part lies: as what holds it says, else as most of its hops lie today.
    pub(super) fn today(&self) -> Vec<bool> {
        let mut votes = vec![0_i64; self.halves.held.len()];
        for (hop, candidate) in self.problem.hops.iter().enumerate() {
            let (Some((part, upper)), Some(now)) = (self.halves.place[hop], candidate.now) else { continue };
            match candidate.choices[now].first_is_upper() {
                Some(first) if first == upper => votes[part] -= 1,
                Some(_) => votes[part] += 1,
                None => {}
            }
        }
        let held = self.halves.held.iter();
        held.zip(votes).map(|(held, votes)| held.unwrap_or(votes > 0)).collect()
    }
}

/// What is chosen.
#[derive(Debug, Clone)]
pub(super) struct State<'r> {
    pub(super) room: &'r Room<'r>,
    /// Of each part whether it is turned over.
    pub(super) turned: Vec<bool>,
    /// Of each hop; none while nothing is chosen.
    choices: Vec<Option<usize>>,
    /// Of each receiver, two a hop.
    over_noise: Vec<f64>,
}

/// What receivers would hear: each that something changes for.
pub(super) type Heard = Vec<(usize, f64)>;

impl<'r> State<'r> {
    /// Nothing chosen but what cannot be otherwise.
    pub(super) fn empty(room: &'r Room<'r>, turned: Vec<bool>) -> Self {
        let hops = &room.problem.hops;
        let choices = hops.iter().map(|hop| (hop.choices.len() == 1).then_some(0)).collect();
        let mut state = Self { room, turned, choices, over_noise: vec![0.0; 2 * hops.len()] };
        state.refresh();
        state
    }

    /// What is chosen for a hop.
    pub(super) fn choice(&self, hop: usize) -> Option<usize> {
        self.choices[hop]
    }

    /// What is chosen for all of them. None if one has nothing.
    pub(super) fn all(&self) -> Option<Vec<usize>> {
        self.choices.iter().copied().collect()
    }

    /// What a receiver hears over its noise.
    pub(super) fn over_noise(&self, receiver: usize) -> f64 {
        self.over_noise[receiver]
    }

    /// All receivers by what they hear.
    pub(super) fn receivers(&self) -> &[f64] {
        &self.over_noise
    }

    /// What it comes to.
    pub(super) fn worth(&self) -> Worth {
        Worth::of(self.over_noise.iter().map(|over| degradation(*over)))
    }

    /// What receivers would hear if a hop were set to something else.
    pub(super) fn would_hear(&self, hop: usize, choice: Option<usize>, heard: &mut Heard) {
        heard.clear();
        let problem = self.room.problem;
        for receiver in [2 * hop, 2 * hop + 1] {
            heard.push((receiver, choice.map_or(0.0, |to| self.sum(receiver, to))));
        }
        for (receiver, reach) in &problem.outgoing[hop] {
            let Some(to) = self.choices[receiver / 2] else { continue };
            let of = |from: Option<usize>| from.map_or(0.0, |from| problem.power(reach, from, *receiver, to));
            let (before, after) = (of(self.choices[hop]), of(choice));
            if before.to_bits() != after.to_bits() {
                heard.push((*receiver, (self.over_noise[*receiver] - before + after).max(0.0)));
            }
        }
    }

    /// What a receiver hears if its own hop is set to a choice.
    fn sum(&self, receiver: usize, to: usize) -> f64 {
        let problem = self.room.problem;
        let incoming = problem.incoming[receiver].iter();
        let moving: f64 = incoming
            .filter_map(|reach| Some(problem.power(reach, self.choices[reach.from as usize]?, receiver, to)))
            .sum();
        problem.constant[receiver] + moving
    }

    /// Sets a hop to what [`State::would_hear`] was asked of.
    pub(super) fn set(&mut self, hop: usize, choice: Option<usize>, heard: &Heard) {
        self.choices[hop] = choice;
        for (receiver, over) in heard {
            self.over_noise[*receiver] = *over;
        }
    }

    /// Adds everything up again, so that rounding does not.
    pub(super) fn refresh(&mut self) {
        for receiver in 0..self.over_noise.len() {
            self.over_noise[receiver] = self.choices[receiver / 2].map_or(0.0, |to| self.sum(receiver, to));
        }
    }

    /// Gives every hop that has nothing what costs least, the hardest first.
    pub(super) fn fill(mut self) -> Self {
        let mut heard = Heard::new();
        for hop in &self.room.moving {
            if self.choices[*hop].is_some() {
                continue;
            }
            let mut best: Option<(Worth, usize)> = None;
            for choice in self.room.options(*hop, &self.turned) {
                self.would_hear(*hop, Some(*choice), &mut heard);
                // Others count by what is added, for what they hear already is no fault of this hop.
                let cost = Worth::of(heard.iter().map(|(receiver, over)| {
                    let before = self.over_noise[*receiver];
                    degradation(*over) * if *receiver / 2 == *hop || *over > before { 1.0 } else { 0.0 }
                }));
                if best.is_none_or(|(least, _)| cost.is_better_than(&least)) {
                    best = Some((cost, *choice));
                }
            }
            if let Some((_, choice)) = best {
                self.would_hear(*hop, Some(choice), &mut heard);
                self.set(*hop, Some(choice), &heard);
            }
        }
        self
    }
}

impl State<'_> {
    /// Changes what receivers hear for what they would hear, and the other way round.
    pub(super) fn exchange(&mut self, heard: &mut Heard) {
        for (receiver, over) in heard {
            std::mem::swap(over, &mut self.over_noise[*receiver]);
        }
    }
}
