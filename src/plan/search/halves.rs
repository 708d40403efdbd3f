//! Which half each site sends in.
//!
//! A site that sends in both halves of a band sends on what it listens to itself. So the sites of a band take turns along
//! its hops, and each connected part of them can be turned over as a whole, unless a hop that stays as it is, or a radio
//! that comes in one half only, holds it.

use std::collections::BTreeMap;

use super::problem::Candidate;

/// Why there is no plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NoPlan {
    /// These sites lead round in a ring of an odd number of hops: two neighbours in it would send in the same half.
    OddRing(Vec<usize>),
    /// From the first of these sites to the last each sends in the other half than the one before, and what holds both ends
    /// says otherwise.
    Held(Vec<usize>),
    /// Hops that stay as they are send in both halves from this site.
    Mixed {
        /// The site.
        site: usize,
        /// Two of the hops.
        hops: [usize; 2],
    },
}

/// A site, in one band.
type Spot = (usize, usize);

/// Where each hop stands in its part.
#[derive(Debug)]
pub(super) struct Halves {
    /// Of each hop its part, and whether its first end is upper when the part is not turned over. None if it takes turns, or
    /// stays as it is.
    pub(super) place: Vec<Option<(usize, bool)>>,
    /// Of each part whether it is turned over, where something holds it.
    pub(super) held: Vec<Option<bool>>,
}

/// A site seen from where its part began.
struct Reached {
    part: usize,
    /// Whether it is upper when its part is not turned over.
    upper: bool,
    /// The site it was reached from.
    from: Option<Spot>,
}

impl Halves {
    pub(super) fn of(hops: &[Candidate]) -> Result<Self, NoPlan> {
        let (stay, move_): (Vec<usize>, Vec<usize>) = (0..hops.len())
            .filter(|hop| hops[*hop].choices.iter().any(|choice| choice.first_is_upper().is_some()))
            .partition(|hop| hops[*hop].choices.len() == 1);
        let walk = Walk { hops, reached: BTreeMap::new(), parts: 0 };
        let walk = walk.along(&move_)?;
        let mut halves = Self { place: vec![None; hops.len()], held: vec![None; walk.parts] };
        let mut holders: Vec<Option<Spot>> = vec![None; walk.parts];
        for hop in &move_ {
            let reached = &walk.reached[&spot(&hops[*hop], 0)];
            halves.place[*hop] = Some((reached.part, reached.upper));
        }
        let mut holds = walk.held_by_hops_that_stay(&stay)?;
        holds.extend(move_.iter().filter_map(|hop| Some((spot(&hops[*hop], 0), only_half(&hops[*hop])?))));
        for (held, upper) in holds {
            let Some(reached) = walk.reached.get(&held) else { continue };
            let turned = upper != reached.upper;
            match halves.held[reached.part] {
                None => (halves.held[reached.part], holders[reached.part]) = (Some(turned), Some(held)),
                Some(other) if other == turned => {}
                Some(_) => {
                    let first = holders[reached.part].unwrap_or(held);
                    return Err(NoPlan::Held(walk.way(first, held)));
                }
            }
        }
        Ok(halves)
    }
}

fn spot(hop: &Candidate, end: usize) -> Spot {
    (hop.band, hop.sites[end])
}

/// Whether the first end is upper in all choices, or lower in all. None if it may be either.
fn only_half(hop: &Candidate) -> Option<bool> {
    let mut halves = hop.choices.iter().filter_map(super::problem::Choice::first_is_upper);
    let first = halves.next()?;
    halves.all(|other| other == first).then_some(first)
}

struct Walk<'h> {
    hops: &'h [Candidate],
    reached: BTreeMap<Spot, Reached>,
    parts: usize,
}

impl Walk<'_> {
    /// Goes along all hops that may change, a part after the other, the nearest sites first.
    fn along(mut self, moving: &[usize]) -> Result<Self, NoPlan> {
        let mut edges: BTreeMap<Spot, Vec<Spot>> = BTreeMap::new();
        for hop in moving {
            let [one, other] = [0, 1].map(|end| spot(&self.hops[*hop], end));
            edges.entry(one).or_default().push(other);
            edges.entry(other).or_default().push(one);
        }
        for start in edges.keys() {
            if self.reached.contains_key(start) {
                continue;
            }
            let part = self.parts;
            self.parts += 1;
            self.reached.insert(*start, Reached { part, upper: true, from: None });
            let mut queue = std::collections::VecDeque::from([*start]);
            while let Some(here) = queue.pop_front() {
                let upper = self.reached[&here].upper;
                for next in &edges[&here] {
                    match self.reached.get(next) {
                        None => {
                            self.reached.insert(*next, Reached { part, upper: !upper, from: Some(here) });
                            queue.push_back(*next);
                        }
                        Some(known) if known.upper == upper => return Err(NoPlan::OddRing(self.way(here, *next))),
                        Some(_) => {}
                    }
                }
            }
        }
        Ok(self)
    }

    /// Sites that hops which stay as they are hold in a half, where hops that may change lead to them.
    fn held_by_hops_that_stay(&self, stay: &[usize]) -> Result<Vec<(Spot, bool)>, NoPlan> {
        let mut held: BTreeMap<Spot, (bool, usize)> = BTreeMap::new();
        for hop in stay {
            let Some(first) = only_half(&self.hops[*hop]) else { continue };
            for (end, upper) in [(0, first), (1, !first)] {
                let at = spot(&self.hops[*hop], end);
                if !self.reached.contains_key(&at) {
                    continue;
                }
                let (known, by) = *held.entry(at).or_insert((upper, *hop));
                if known != upper {
                    return Err(NoPlan::Mixed { site: at.1, hops: [by, *hop] });
                }
            }
        }
        Ok(held.into_iter().map(|(at, (upper, _))| (at, upper)).collect())
    }

    /// Sites from one to another of a part, both among them.
    fn way(&self, from: Spot, to: Spot) -> Vec<usize> {
        let back =
            |start: Spot| std::iter::successors(Some(start), |at| self.reached.get(at)?.from).collect::<Vec<_>>();
        let (mut one, mut other) = (back(from), back(to));
        // What both have in common from where they meet on is on neither way.
        let mut meeting = None;
        while one.last().is_some() && one.last() == other.last() {
            meeting = one.pop();
            other.pop();
        }
        one.into_iter().chain(meeting).chain(other.into_iter().rev()).map(|(_, site)| site).collect()
    }
}
