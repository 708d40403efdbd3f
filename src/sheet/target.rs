//! What a hop must reach: its own objectives, its network's where it has none, the stated defaults where neither speaks.

use super::assumption::Assumption;
use super::practice::Practice;
use super::traced::{Traced, see};
use super::wanted::{Asked, Wanted, asked, required};
use crate::at;
use crate::network::ResolvedHop;
use crate::spec::{Directions, Errored, Period};
use crate::units::{
    Celsius, Decibels, Degrees, GramsPerCubicMetre, Hectopascals, MegabitsPerSecond, Metres, MillimetresPerHour,
    Minutes, Percent, Volts,
};

/// How far a measured level may lie from the predicted one: common practice, no source.
pub const ACCEPTANCE_WINDOW: Decibels = Decibels(4.0);
/// Voltage to keep in hand above the least a radio takes: common practice, no source.
pub const VOLTAGE_RESERVE: Volts = Volts(2.0);
/// What sway may cost at one end where the network does not say; common practice.
pub const WIND_LOSS: Decibels = Decibels(1.0);
/// What locking may change where the network does not say: common practice, no source.
pub const LOCKING_LOSS: Decibels = Decibels(1.0);
/// How much interference may raise a threshold where the network does not say: common practice, no source.
pub const THRESHOLD_DEGRADATION: Decibels = Decibels(1.0);
/// How far over the noise of a neighbour's receiver one sender may come through where the network does not say: common
/// practice, no source.
pub const NEIGHBOUR_DISTURBANCE: Decibels = Decibels(-10.0);
/// How far the two ends may disagree, predictions taken off, where the network does not say: common practice, no source.
pub const RECIPROCITY: Decibels = Decibels(3.0);
/// How far the voltage found may lie below the predicted one where the network does not say: common practice, no source.
pub const VOLTAGE_DROP: Volts = Volts(1.0);
/// How far the bearing as found may lie from the designed one where the network does not say: common practice, no source.
pub const FOUND_BEARING: Degrees = Degrees(3.0);
/// The same for the tilt.
pub const FOUND_TILT: Degrees = Degrees(0.5);
/// The same for the height.
pub const FOUND_HEIGHT: Metres = Metres(0.5);
/// Shortest service test where the network does not say: common practice, no source.
pub const SERVICE_TEST: Minutes = Minutes(10.0);
/// Hottest air where a network states none: common practice, no source.
pub const HOTTEST_AIR: Celsius = Celsius(40.0);

/// Air along the path, as far as the hop or its network gives it.
#[derive(Debug, Clone)]
pub struct WantedAir {
    /// Temperature.
    pub temperature: Option<Wanted<Celsius>>,
    /// Pressure of dry air and vapour together.
    pub pressure: Option<Wanted<Hectopascals>>,
    /// Relative humidity.
    pub humidity: Option<Wanted<Percent>>,
}

impl WantedAir {
    /// How many of the three are given.
    fn count(&self) -> usize {
        [self.temperature.is_some(), self.pressure.is_some(), self.humidity.is_some()]
            .into_iter()
            .filter(|g| *g)
            .count()
    }

    /// Whether none is given.
    #[must_use]
    pub fn is_reference(&self) -> bool {
        self.count() == 0
    }
}

/// What a hop must reach and the weather it must stand.
#[derive(Debug, Clone)]
pub struct Target {
    /// Share of the time.
    pub availability: Wanted<Percent>,
    /// The time it is a share of.
    pub(super) period: Traced<Period>,
    /// Whether it holds for both directions together or for each.
    pub(super) together: Traced<Directions>,
    /// Most of the worst month that may be severely errored, if anybody says.
    pub errored: Option<Wanted<Percent>>,
    /// How far the rain rate may be off, as a share of it, if anybody says.
    pub rain_rate_tolerance: Option<Wanted<Percent>>,
    /// Rate that the availability is asked for.
    pub capacity: Wanted<MegabitsPerSecond>,
    /// Least margin in clear air, if one is asked for.
    pub fade_margin: Option<Wanted<Decibels>>,
    /// Window around the predicted level.
    pub acceptance_window: Wanted<Decibels>,
    /// Rain rate exceeded for 0.01 % of the year, if anybody gave one.
    pub rain_rate: Option<Wanted<MillimetresPerHour>>,
    /// Air along the path, as far as anybody gave it.
    pub air: WantedAir,
    /// Water in the fog to be looked at, if anybody gave it.
    pub fog: Option<Wanted<GramsPerCubicMetre>>,
    /// How far layers of air may lift the level, if anybody gave it.
    pub up_fade: Option<Wanted<Decibels>>,
    /// Clear-air climate, if anybody gave it: `lg K` and `dN75`.
    pub(super) refractivity: Option<Traced<[f64; 2]>>,
    /// Mean rain height, if anybody gave it.
    pub rain_height: Option<Wanted<Metres>>,
    /// Hottest air.
    pub hottest_air: Wanted<Celsius>,
    /// Voltage to keep in hand.
    pub voltage_reserve: Wanted<Volts>,
    /// What sway in the operating wind may cost at one end.
    pub wind_loss: Wanted<Decibels>,
    /// What locking may change of the level.
    pub locking_loss: Wanted<Decibels>,
    /// How much interference may raise a threshold.
    pub threshold_degradation: Wanted<Decibels>,
    /// How far over the noise of a neighbour's receiver a sender may come through.
    pub neighbour_disturbance: Wanted<Decibels>,
    /// How far the two ends may disagree.
    pub reciprocity: Wanted<Decibels>,
    /// How far the bearing as found may lie from the designed one.
    pub found_bearing: Wanted<Degrees>,
    /// The same for the tilt.
    pub found_tilt: Wanted<Degrees>,
    /// The same for the height.
    pub found_height: Wanted<Metres>,
    /// Shortest service test.
    pub service_test: Wanted<Minutes>,
    /// How far the voltage found may lie below the predicted one.
    pub voltage_drop: Wanted<Volts>,
    /// Thresholds of common practice.
    pub practice: Practice,
}

impl Target {
    /// The targets of a hop.
    #[must_use]
    pub fn of(resolved: &ResolvedHop<'_>) -> Self {
        let (hop, network) = (resolved.hop, resolved.network);
        Self {
            availability: asked!(hop.objectives.availability).or_else(required!(network.objectives.availability)),
            period: chosen([see!(hop.objectives.period), see!(network.objectives.period)]),
            together: chosen([see!(hop.objectives.directions), see!(network.objectives.directions)]),
            errored: errored(resolved),
            rain_rate_tolerance: asked!(hop.climate.rain_rate_tolerance)
                .or(asked!(network.climate.rain_rate_tolerance))
                .wanted(),
            capacity: asked!(hop.objectives.capacity).or_else(required!(network.objectives.capacity)),
            fade_margin: asked!(hop.objectives.fade_margin).or(asked!(network.objectives.fade_margin)).wanted(),
            acceptance_window: asked!(hop.objectives.acceptance_window)
                .or(asked!(network.objectives.acceptance_window))
                .or_assume(ACCEPTANCE_WINDOW, at!(network.objectives.acceptance_window)),
            rain_rate: rain_rate(resolved),
            air: air(resolved),
            fog: asked!(hop.climate.fog).or(asked!(network.climate.fog)).wanted(),
            up_fade: asked!(hop.climate.up_fade).or(asked!(network.climate.up_fade)).wanted(),
            refractivity: refractivity(resolved),
            rain_height: asked!(hop.climate.rain_height).or(asked!(network.climate.rain_height)).wanted(),
            hottest_air: asked!(hop.climate.hottest_air)
                .or(asked!(network.climate.hottest_air))
                .or_assume(HOTTEST_AIR, at!(network.climate.hottest_air)),
            wind_loss: asked!(network.limits.wind_loss).or_assume(WIND_LOSS, at!(network.limits.wind_loss)),
            locking_loss: asked!(network.limits.locking_loss).or_assume(LOCKING_LOSS, at!(network.limits.locking_loss)),
            threshold_degradation: asked!(network.limits.threshold_degradation)
                .or_assume(THRESHOLD_DEGRADATION, at!(network.limits.threshold_degradation)),
            neighbour_disturbance: asked!(network.limits.neighbour_disturbance)
                .or_assume(NEIGHBOUR_DISTURBANCE, at!(network.limits.neighbour_disturbance)),
            reciprocity: asked!(network.limits.reciprocity).or_assume(RECIPROCITY, at!(network.limits.reciprocity)),
            found_bearing: asked!(network.limits.found_bearing)
                .or_assume(FOUND_BEARING, at!(network.limits.found_bearing)),
            found_tilt: asked!(network.limits.found_tilt).or_assume(FOUND_TILT, at!(network.limits.found_tilt)),
            found_height: asked!(network.limits.found_height).or_assume(FOUND_HEIGHT, at!(network.limits.found_height)),
            service_test: asked!(network.limits.service_test).or_assume(SERVICE_TEST, at!(network.limits.service_test)),
            voltage_drop: asked!(network.limits.voltage_drop).or_assume(VOLTAGE_DROP, at!(network.limits.voltage_drop)),
            voltage_reserve: asked!(network.limits.voltage_reserve)
                .or_assume(VOLTAGE_RESERVE, at!(network.limits.voltage_reserve)),
            practice: Practice::of(resolved),
        }
    }

    /// The time its availability is a share of.
    #[must_use]
    pub fn period(&self) -> Period {
        self.period.get().unwrap_or_default()
    }

    /// Whether its availability holds for both directions together or for each.
    #[must_use]
    pub fn directions(&self) -> Directions {
        self.together.get().unwrap_or_default()
    }

    /// The defaults that stand in for what nobody stated, a sentence each, for the design pack.
    #[must_use]
    pub fn assumptions(&self) -> Vec<Assumption> {
        let mut list = vec![Assumption::EarthRadius];
        match self.air.count() {
            0 => list.push(Assumption::Air),
            3 => {}
            _ => list.push(Assumption::RestOfAir),
        }
        list.push(Assumption::StraightGround);
        list.extend(self.practice.assumptions());
        if self.acceptance_window.assumed {
            list.push(Assumption::AcceptanceWindow { window: ACCEPTANCE_WINDOW });
        }
        if self.hottest_air.assumed {
            list.push(Assumption::HottestAir { temperature: HOTTEST_AIR });
        }
        if self.voltage_reserve.assumed {
            list.push(Assumption::VoltageReserve { reserve: VOLTAGE_RESERVE });
        }
        list
    }
}

/// What the first of two who may choose did choose, or what is usual. Both decide.
fn chosen<C: Copy + Default>([own, network]: [Traced<&Option<C>>; 2]) -> Traced<C> {
    own.and_then(|own| match own {
        Some(own) => Traced::constant(*own),
        None => network.map(|network| network.unwrap_or_default()),
    })
}

/// The hop's own objective for errors, or its network's.
fn errored(resolved: &ResolvedHop<'_>) -> Option<Wanted<Percent>> {
    let (hop, network) = (resolved.hop, resolved.network);
    let share = |errored: &Option<Errored>| errored.as_ref().map(|errored| errored.share.clone());
    let [own, all] = [see!(hop.objectives.errored).map(share), see!(network.objectives.errored).map(share)];
    Asked::by(&own).or(Asked::by(&all)).wanted()
}

/// The hop's own clear-air climate, or its network's.
fn refractivity(resolved: &ResolvedHop<'_>) -> Option<Traced<[f64; 2]>> {
    let (hop, network) = (resolved.hop, resolved.network);
    let written = Traced::first_written([see!(hop.climate.refractivity), see!(network.climate.refractivity)])?;
    Some(written.map(|given| [given.log_k.0, given.dn_75.0]))
}

/// The hop's own air, or its network's, each quantity for itself.
fn air(resolved: &ResolvedHop<'_>) -> WantedAir {
    let (hop, network) = (resolved.hop, resolved.network);
    WantedAir {
        temperature: asked!(hop.climate.air.temperature).or(asked!(network.climate.air.temperature)).wanted(),
        pressure: asked!(hop.climate.air.pressure).or(asked!(network.climate.air.pressure)).wanted(),
        humidity: asked!(hop.climate.air.humidity).or(asked!(network.climate.air.humidity)).wanted(),
    }
}

/// The hop's own rain rate, or the greater of its sites', or the network's.
fn rain_rate(resolved: &ResolvedHop<'_>) -> Option<Wanted<MillimetresPerHour>> {
    let (hop, network) = (resolved.hop, resolved.network);
    let sites = resolved.ends.each_ref().map(|end| {
        let site = end.site;
        asked!(site.rain_rate)
    });
    asked!(hop.climate.rain_rate).or(sites.a.or_greater(sites.b)).or(asked!(network.climate.rain_rate)).wanted()
}
