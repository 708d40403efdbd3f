//! What would fix a hop that misses its objective, found by trying it on the sheet's own physics.

use super::direction::{self, Direction, Means, Trial};
use super::geometry::Geometry;
use super::licence::Licence;
use super::outage::Causes;
use super::path::{self, GroundOf};
use super::rain::RainMaps;
use super::service::counted_outage;
use super::states::{State, lowest_threshold};
use crate::network::ResolvedHop;
use crate::physics::link;
use crate::spec::{Both, Way};
use crate::units::{Dbm, Decibels, MegabitsPerSecond, Megahertz, Metres, Quantity};

/// What would fix a hop, for each objective it may miss.
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
    /// More level each way, wherever it comes from: no change by itself, for it may overload a receiver.
    pub level: Option<Decibels>,
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

/// Whether both directions together meet an objective; none where that cannot be told.
type Passes<'p> = &'p dyn Fn(&Both<Direction<'_>>) -> Option<bool>;

/// The same in states other than the one that reaches the capacity asked for, each by its number.
type StatesPass<'p> = &'p dyn Fn(&Both<Direction<'_>>, &Both<usize>) -> Option<bool>;

pub(super) fn of(
    resolved: &ResolvedHop<'_>,
    maps: &RainMaps,
    geometry: &Geometry,
    means: Means<'_>,
    directions: &Both<Direction<'_>>,
    licence: &Both<Licence>,
) -> Mends {
    if !means.hearing.is_helped() {
        return Mends::default();
    }
    let highest = licence.each_ref().map(|licence| licence.lines.highest_power.get());
    let bench = Bench { resolved, maps, geometry, means, directions, highest };
    let enough = |each: &Both<Causes>| {
        let outage = counted_outage(each, &means).get()?;
        Some(link::availability(outage.most) >= means.target.availability.value())
    };
    let available = |both: &Both<Direction<'_>>| enough(&both.each_ref().map(Direction::objective_causes));
    let available_in = |both: &Both<Direction<'_>>, states: &Both<usize>| {
        enough(&Both::ways(|way| both[way].states[states[way]].causes.clone()))
    };
    let wide = |margin: Option<Decibels>| Some(margin? >= means.target.fade_margin.as_ref()?.value());
    let held = |both: &Both<Direction<'_>>| {
        let wide = both.each_ref().all(|direction| wide(direction.margins.fade_margin.get()))?;
        Some(wide.a && wide.b)
    };
    let held_in = |both: &Both<Direction<'_>>, states: &Both<usize>| {
        let Both { a, b } = Both::ways(|way| wide(both[way].states[states[way]].lines.margin.get()));
        Some(a? && b?)
    };
    Mends { availability: bench.mend(&available, &available_in), margin: bench.mend(&held, &held_in) }
}

/// A hop to try changes on.
struct Bench<'m, 'n> {
    resolved: &'n ResolvedHop<'n>,
    maps: &'m RainMaps,
    geometry: &'m Geometry,
    means: Means<'m>,
    directions: &'m Both<Direction<'m>>,
    /// The most each end may send, where a code or licence says.
    highest: Both<Option<Dbm>>,
}

/// More decibels than this are no fix.
const MOST: Decibels = Decibels(60.0);

impl Bench<'_, '_> {
    fn mend(&self, passes: Passes<'_>, states_pass: StatesPass<'_>) -> Mend {
        if passes(self.directions) != Some(false) {
            return Mend::default();
        }
        let level = self.more(&|more| Both { a: more, b: more }, passes).map(Quantity::rounded_up);
        Mend {
            level,
            gain: level.filter(|more| self.good(stronger(Both { a: *more, b: *more }), passes)),
            power: self.power(passes),
            bandwidth: self.bandwidth(passes),
            capacity: self.capacity(states_pass),
            distance: self.shorter(passes),
        }
    }

    /// Both directions with something changed in each.
    fn trial(&self, trials: Both<Trial>) -> Both<Direction<'_>> {
        Both::ways(|way| direction::with(self.resolved, &self.means, way, trials[way]))
    }

    /// Whether the hop passes with more decibels each way.
    fn does(&self, more: Both<Decibels>, passes: Passes<'_>) -> bool {
        passes(&self.trial(stronger(more))) == Some(true)
    }

    /// Whether it passes and leaves the receivers whole that get more.
    fn good(&self, trials: Both<Trial>, passes: Passes<'_>) -> bool {
        let both = self.trial(trials);
        let louder = Way::BOTH.into_iter().filter(|way| trials[*way].more.0 > 0.0);
        passes(&both) == Some(true) && !louder.map(|way| &both[way]).any(loud)
    }

    /// The fewest decibels that do, put in by `with`.
    fn more(&self, with: &dyn Fn(Decibels) -> Both<Decibels>, passes: Passes<'_>) -> Option<Decibels> {
        let (mut low, mut high) = (Decibels(0.0), MOST);
        if self.does(with(low), passes) {
            return Some(low);
        }
        if !self.does(with(high), passes) {
            return None;
        }
        for _ in 0..40 {
            let middle = Decibels(f64::midpoint(low.0, high.0));
            if self.does(with(middle), passes) { high = middle } else { low = middle }
        }
        Some(high)
    }

    /// Powers that do: of one end alone if that is enough, else of both, each as little as the other leaves to do.
    fn power(&self, passes: Passes<'_>) -> Option<Both<Option<Dbm>>> {
        let none = Decibels(0.0);
        let only_a = |more: Decibels| Both { a: more, b: none };
        let only_b = |more: Decibels| Both { a: none, b: more };
        let alone = [&only_a as &dyn Fn(Decibels) -> Both<Decibels>, &only_b];
        let found = alone.iter().find_map(|with| self.set(with(self.more(*with, passes)?), passes));
        found.or_else(|| {
            let most = self.more(&|more| Both { a: more, b: more }, passes)?;
            let a = self.more(&|more| Both { a: more, b: most }, passes)?;
            let b = self.more(&|more| Both { a, b: more }, passes)?;
            self.set(Both { a, b }, passes)
        })
    }

    /// Powers so much greater, to what can be set, if radios, codes and licence allow them and they do.
    fn set(&self, more: Both<Decibels>, passes: Passes<'_>) -> Option<Both<Option<Dbm>>> {
        let (mut powers, mut trials) = (Both::<Option<Dbm>>::default(), Both::<Trial>::default());
        for way in Way::BOTH.into_iter().filter(|way| more[*way].0 > 0.0) {
            let sender = &self.resolved.ends[way.sender()];
            let now = sender.end.transmit_power.value;
            let set = (now + more[way]).rounded_up();
            let lawful = self.highest[way].is_none_or(|highest| set <= highest);
            powers[way] = Some((lawful && sender.radio.transmit_power.holds(set)).then_some(set)?);
            trials[way].more = set - now;
        }
        self.good(trials, passes).then_some(powers)
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
            let both = self.trial(Both { a: trial, b: trial });
            let good = passes(&both) == Some(true) && !both.iter().any(loud);
            let spare = both.each_ref().map(|direction| direction.margins.fade_margin.get().unwrap_or_default().0);
            let title = both.a.objective_state()?.title.clone();
            good.then_some((width, title, spare.a.min(spare.b)))
        });
        trials.max_by(|one, other| one.2.total_cmp(&other.2)).map(|(width, title, _)| (width, title))
    }

    /// The greatest smaller capacity that passes, in the most robust states that reach it, and the state that gives it.
    fn capacity(&self, passes: StatesPass<'_>) -> Option<(MegabitsPerSecond, String)> {
        let asked = self.means.target.capacity.value();
        let rates = self.directions.iter().flat_map(|direction| direction.states.iter().filter_map(rate));
        let mut rates: Vec<MegabitsPerSecond> = rates.filter(|rate| *rate < asked).collect();
        rates.sort_by(|one, other| other.0.total_cmp(&one.0));
        rates.into_iter().find_map(|wanted| {
            let states = self.directions.each_ref().all(|direction| most_robust(&direction.states, wanted))?;
            let slower =
                Way::BOTH.into_iter().find(|way| rate(&self.directions[*way].states[states[*way]]) == Some(wanted))?;
            let title = self.directions[slower].states[states[slower]].title.clone();
            (passes(self.directions, &states) == Some(true)).then_some((wanted, title))
        })
    }

    /// The greatest length, rounded down, at which it passes.
    fn shorter(&self, passes: Passes<'_>) -> Option<Metres> {
        let Means { path, target, .. } = self.means;
        let whole = path.distance.get()?;
        let good = |share: f64| {
            let geometry = self.geometry.shortened(share);
            let path = path::compute(self.resolved, &geometry, target, self.maps, GroundOf::under(self.means.path));
            let both = direction::both(self.resolved, &Means { path: &path, ..self.means });
            (passes(&both) == Some(true), both.iter().any(loud))
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

/// More power or gain each way.
fn stronger(more: Both<Decibels>) -> Both<Trial> {
    more.map(|more| Trial { more, bandwidth: None })
}

fn rate(state: &State) -> Option<MegabitsPerSecond> {
    state.lines.capacity.value().ok().map(|given| given.value)
}

/// The most robust of the states that reach a capacity, by its number. One whose figures are broken is not among them.
fn most_robust(states: &[State], wanted: MegabitsPerSecond) -> Option<usize> {
    let known = |state: &State| {
        let threshold = state.lines.threshold.value().map_or(f64::INFINITY, |given| given.value.0);
        (rate(state).map_or(f64::NEG_INFINITY, |rate| rate.0), threshold)
    };
    lowest_threshold(&states.iter().map(known).collect::<Vec<_>>(), wanted.0)
}

/// Whether a receiver gets more than it takes, or that cannot be told.
fn loud(direction: &Direction<'_>) -> bool {
    let up_faded = direction.levels.up_fade_in_hand.get().is_some_and(|left| left.0 < 0.0);
    up_faded || direction.margins.overload_in_hand.get().is_none_or(|left| left.0 < 0.0)
}
