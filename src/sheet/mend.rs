//! What would mend a hop that misses its objective, found by trying it on the sheet's own physics.

use super::direction::{self, Direction, Trial};
use super::geometry::Geometry;
use super::licence::Licence;
use super::path::{self, PathLines};
use super::rain::RainMaps;
use super::target::Target;
use super::traced::AsTraced as _;
use crate::network::ResolvedHop;
use crate::spec::{Both, Way};
use crate::units::{Dbm, Decibels, MegabitsPerSecond, Megahertz, Metres, Quantity as _};

/// What would mend a hop, for each objective it may miss.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Mends {
    /// For the availability asked for.
    pub availability: Mend,
    /// For the fade margin asked for, in both directions.
    pub margin: Mend,
}

/// Single changes each of which would do, without overloading a receiver. Empty while nothing is amiss.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Mend {
    /// More gain of both antennas together, all else as it is.
    pub gain: Option<Decibels>,
    /// Powers to set at the ends, within what radios, codes and licence allow; the one that is to stay is none.
    pub power: Option<Both<Option<Dbm>>>,
    /// Another bandwidth, and the state that then reaches the capacity asked for.
    pub bandwidth: Option<(Megahertz, String)>,
    /// A smaller capacity that the hop does reach, and the state that gives it.
    pub capacity: Option<(MegabitsPerSecond, String)>,
    /// A shorter hop.
    pub distance: Option<Metres>,
}

impl Mend {
    /// The changes in words, the one that costs least first.
    #[must_use]
    pub fn words(&self) -> Vec<String> {
        let mut list = Vec::new();
        match self.power {
            Some(Both { a: Some(a), b: Some(b) }) => list.push(format!("a power of {a} at end a and {b} at end b")),
            Some(Both { a: Some(a), b: None }) => list.push(format!("a power of {a} at end a")),
            Some(Both { a: None, b: Some(b) }) => list.push(format!("a power of {b} at end b")),
            _ => {}
        }
        list.extend(self.bandwidth.as_ref().map(|(width, state)| format!("a bandwidth of {width} with {state}")));
        list.extend(self.gain.map(|gain| format!("{gain} more gain, both antennas together")));
        list.extend(self.distance.map(|length| format!("a hop of {length}")));
        list.extend(self.capacity.as_ref().map(|(rate, state)| format!("an objective of {rate} ({state})")));
        list
    }
}

/// Whether one direction meets an objective; none where that cannot be told.
type Passes<'p> = &'p dyn Fn(&Direction<'_>) -> Option<bool>;

pub(super) fn of(
    resolved: &ResolvedHop<'_>,
    target: &Target,
    maps: &RainMaps,
    geometry: &Geometry,
    path: &PathLines,
    directions: &Both<Direction<'_>>,
    licence: &Both<Licence>,
) -> Mends {
    let highest = licence.each_ref().map(|licence| licence.lines.highest_power.get());
    let bench = Bench { resolved, target, maps, geometry, path, directions, highest };
    // The same rain falls on both directions: the hop is as available as the worse one.
    let enough = |state: usize, direction: &Direction<'_>| {
        Some(direction.states[state].lines.availability.get()? >= target.availability.value())
    };
    let available = |direction: &Direction<'_>| enough(direction.objective()?, direction);
    let wide = |state: usize, direction: &Direction<'_>| {
        Some(direction.states[state].lines.margin.get()? >= target.fade_margin.as_ref()?.value())
    };
    let held = |direction: &Direction<'_>| wide(direction.objective()?, direction);
    Mends { availability: bench.mend(&available, &enough), margin: bench.mend(&held, &wide) }
}

/// A hop to try changes on.
struct Bench<'m, 'n> {
    resolved: &'n ResolvedHop<'n>,
    target: &'m Target,
    maps: &'m RainMaps,
    geometry: &'m Geometry,
    path: &'m PathLines,
    directions: &'m Both<Direction<'m>>,
    /// The most each end may send, where a code or licence says.
    highest: Both<Option<Dbm>>,
}

/// More decibels than this are no mend.
const MOST: Decibels = Decibels(60.0);

impl Bench<'_, '_> {
    fn mend(&self, passes: Passes<'_>, state_passes: &dyn Fn(usize, &Direction<'_>) -> Option<bool>) -> Mend {
        let Some(enough) = self.directions.each_ref().all(passes) else { return Mend::default() };
        if enough.into_iter().all(|enough| enough) {
            return Mend::default();
        }
        Mend {
            gain: self.gain(passes),
            power: self.power(enough, passes),
            bandwidth: self.bandwidth(passes),
            capacity: self.capacity(state_passes),
            distance: self.shorter(passes),
        }
    }

    fn trial(&self, way: Way, trial: Trial) -> Direction<'_> {
        direction::with(self.resolved, self.path, self.target, way, trial)
    }

    /// Whether a direction with something changed passes and leaves the receiver whole.
    fn good(&self, way: Way, trial: Trial, passes: Passes<'_>) -> bool {
        let direction = self.trial(way, trial);
        passes(&direction) == Some(true) && !loud(&direction)
    }

    /// The fewest decibels with which a direction passes.
    fn more(&self, way: Way, passes: Passes<'_>) -> Option<Decibels> {
        let does = |more: f64| passes(&self.trial(way, Trial { more: Decibels(more), bandwidth: None })) == Some(true);
        let (mut low, mut high) = (0.0, MOST.0);
        if does(low) {
            return Some(Decibels(low));
        }
        if !does(high) {
            return None;
        }
        for _ in 0..40 {
            let middle = f64::midpoint(low, high);
            if does(middle) { high = middle } else { low = middle }
        }
        Some(Decibels(high))
    }

    fn gain(&self, passes: Passes<'_>) -> Option<Decibels> {
        let Both { a, b } = Both::ways(|way| self.more(way, passes)).all(|more| more)?;
        let more = if a < b { b } else { a }.rounded_up();
        let trial = Trial { more, bandwidth: None };
        Way::BOTH.into_iter().all(|way| self.good(way, trial, passes)).then_some(more)
    }

    fn power(&self, enough: Both<bool>, passes: Passes<'_>) -> Option<Both<Option<Dbm>>> {
        let mut powers = Both::default();
        for way in Way::BOTH.into_iter().filter(|way| !enough[*way]) {
            let sender = &self.resolved.ends[way.sender()];
            let now = sender.end.transmit_power.value;
            let set = (now + self.more(way, passes)?).rounded_up();
            let trial = Trial { more: set - now, bandwidth: None };
            let lawful = self.highest[way].is_none_or(|highest| set <= highest);
            let allowed = lawful && sender.radio.transmit_power.holds(set) && self.good(way, trial, passes);
            powers[way] = Some(allowed.then_some(set)?);
        }
        Some(powers)
    }

    /// The bandwidth, of those both radios have states for, that leaves most to spare.
    fn bandwidth(&self, passes: Passes<'_>) -> Option<(Megahertz, String)> {
        let Both { a, b } = self.resolved.ends.each_ref().map(|end| end.radio);
        let own = self.resolved.hop.channel.bandwidth.value;
        let mut widths: Vec<Megahertz> = a.states.iter().map(|state| state.bandwidth.value).collect();
        widths.retain(|width| *width != own && b.states.iter().any(|state| state.bandwidth.value == *width));
        widths.sort_by(|one, other| one.0.total_cmp(&other.0));
        widths.dedup();
        // A narrower channel fits where the wide one did.
        let trials = widths.into_iter().filter(|width| *width < own).filter_map(|width| {
            let trial = Trial { more: Decibels(0.0), bandwidth: Some(width) };
            let both = Both::ways(|way| self.trial(way, trial));
            let good = both.iter().all(|direction| passes(direction) == Some(true) && !loud(direction));
            let spare = both.each_ref().map(|direction| direction.margins.fade_margin.get().unwrap_or_default().0);
            let title = both.a.objective_state()?.title.clone();
            good.then_some((width, title, spare.a.min(spare.b)))
        });
        trials.max_by(|one, other| one.2.total_cmp(&other.2)).map(|(width, title, _)| (width, title))
    }

    /// The fastest state at the hop's bandwidth that passes in both directions.
    fn capacity(&self, passes: &dyn Fn(usize, &Direction<'_>) -> Option<bool>) -> Option<(MegabitsPerSecond, String)> {
        let rate = |direction: &Direction<'_>, state: usize| {
            direction.states[state].lines.capacity.value().ok().map(|given| given.value)
        };
        let asked = self.target.capacity.value();
        let best = |direction: &Direction<'_>| {
            let good = (0..direction.states.len()).filter(|state| passes(*state, direction) == Some(true));
            let rated = good.filter_map(|state| Some((rate(direction, state)?, direction.states[state].title.clone())));
            let rated = rated.filter(|(rate, _)| *rate < asked);
            rated.max_by(|one, other| one.0.0.total_cmp(&other.0.0))
        };
        let Both { a, b } = self.directions.each_ref().all(best)?;
        Some(if a.0 < b.0 { a } else { b })
    }

    /// The greatest length, rounded down, at which it passes.
    fn shorter(&self, passes: Passes<'_>) -> Option<Metres> {
        let whole = self.path.distance.get()?;
        let good = |share: f64| {
            let geometry = self.geometry.shortened(share);
            let path = path::compute(self.resolved, &geometry, self.target, self.maps, self.path.diffraction.traced());
            let both = direction::both(self.resolved, &path, self.target);
            (both.iter().all(|direction| passes(direction) == Some(true)), both.iter().any(loud))
        };
        // Whole metres: what passes at one and fails at the next is known to the metre it is printed to.
        let (mut low, mut high) = (1.0, whole.0.ceil());
        if !good(low / whole.0).0 {
            return None;
        }
        while high - low > 1.0 {
            let middle = f64::midpoint(low, high).floor();
            if good(middle / whole.0).0 { low = middle } else { high = middle }
        }
        let length = Metres(low).rounded_down();
        let (passes, loud) = good(length.0 / whole.0);
        (length.0 >= 1.0 && passes && !loud).then_some(length)
    }
}

/// Whether a receiver gets more than it takes, or that cannot be told.
fn loud(direction: &Direction<'_>) -> bool {
    let up_faded = direction.levels.up_fade_in_hand.get().is_some_and(|left| left.0 < 0.0);
    up_faded || direction.margins.overload_in_hand.get().is_none_or(|left| left.0 < 0.0)
}
