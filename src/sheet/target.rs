//! What a hop must reach: its own objectives, its network's where it has none, the stated defaults where neither speaks.

use super::assumption::Assumption;
use super::practice::Practice;
use crate::at;
use crate::network::ResolvedHop;
use crate::place::Place;
use crate::spec::Both;
use crate::units::{
    Celsius, Decibels, Given, GramsPerCubicMetre, Hectopascals, MegabitsPerSecond, Metres, MillimetresPerHour, Percent,
    Volts,
};

/// How far a measured level may lie from the predicted one: common practice, no source.
pub const ACCEPTANCE_WINDOW: Decibels = Decibels(4.0);
/// Voltage to keep in hand above the least a radio takes: common practice, no source.
pub const VOLTAGE_RESERVE: Volts = Volts(2.0);
/// What sway may cost at one end where the network does not say; common practice.
pub const WIND_LOSS: Decibels = Decibels(1.0);
/// Distance to keep from power lines where the network does not say: ten feet, 29 CFR 1926.1408 (second-hand).
pub const POWER_LINE: Metres = Metres(3.05);
/// What locking may change where the network does not say: common practice, no source.
pub const LOCKING_LOSS: Decibels = Decibels(1.0);
/// How far the two ends may disagree, predictions taken off, where the network does not say: common practice, no source.
pub const RECIPROCITY: Decibels = Decibels(3.0);
/// How far the voltage found may lie below the predicted one where the network does not say: common practice, no source.
pub const VOLTAGE_DROP: Volts = Volts(1.0);
/// Hottest air where a network states none: common practice, no source.
pub const HOTTEST_AIR: Celsius = Celsius(40.0);

/// Something asked for, and where.
#[derive(Debug, Clone)]
pub struct Wanted<Q> {
    /// What is asked for.
    pub given: Given<Q>,
    /// Who asked: the field, or the network's document where a default stands in.
    pub place: Place,
    /// Nobody asked; a stated default stands in.
    pub assumed: bool,
}

impl<Q: Copy> Wanted<Q> {
    /// The value.
    pub fn value(&self) -> Q {
        self.given.value
    }
}

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
    /// Share of the year.
    pub availability: Wanted<Percent>,
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
    /// Clear-air climate, if anybody gave it: `lg K`, `dN75` and where.
    pub refractivity: Option<([f64; 2], Place)>,
    /// Mean rain height, if anybody gave it.
    pub rain_height: Option<Wanted<Metres>>,
    /// Hottest air.
    pub hottest_air: Wanted<Celsius>,
    /// Voltage to keep in hand.
    pub voltage_reserve: Wanted<Volts>,
    /// What sway in the operating wind may cost at one end.
    pub wind_loss: Wanted<Decibels>,
    /// Distance to keep from power lines beyond what could fall.
    pub power_line: Wanted<Metres>,
    /// What locking may change of the level.
    pub locking_loss: Wanted<Decibels>,
    /// How far the two ends may disagree.
    pub reciprocity: Wanted<Decibels>,
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
            availability: first(hop.objectives.availability.as_ref(), at!(hop.objectives.availability))
                .unwrap_or_else(|| asked(&network.objectives.availability, at!(network.objectives.availability))),
            capacity: first(hop.objectives.capacity.as_ref(), at!(hop.objectives.capacity))
                .unwrap_or_else(|| asked(&network.objectives.capacity, at!(network.objectives.capacity))),
            fade_margin: first(hop.objectives.fade_margin.as_ref(), at!(hop.objectives.fade_margin))
                .or_else(|| first(network.objectives.fade_margin.as_ref(), at!(network.objectives.fade_margin))),
            acceptance_window: first(hop.objectives.acceptance_window.as_ref(), at!(hop.objectives.acceptance_window))
                .or_else(|| {
                    first(network.objectives.acceptance_window.as_ref(), at!(network.objectives.acceptance_window))
                })
                .unwrap_or_else(|| assumed(ACCEPTANCE_WINDOW, at!(network.objectives.acceptance_window))),
            rain_rate: rain_rate(resolved),
            air: air(resolved),
            fog: first(hop.climate.fog.as_ref(), at!(hop.climate.fog))
                .or_else(|| first(network.climate.fog.as_ref(), at!(network.climate.fog))),
            refractivity: refractivity(resolved),
            rain_height: first(hop.climate.rain_height.as_ref(), at!(hop.climate.rain_height))
                .or_else(|| first(network.climate.rain_height.as_ref(), at!(network.climate.rain_height))),
            hottest_air: first(hop.climate.hottest_air.as_ref(), at!(hop.climate.hottest_air))
                .or_else(|| first(network.climate.hottest_air.as_ref(), at!(network.climate.hottest_air)))
                .unwrap_or_else(|| assumed(HOTTEST_AIR, at!(network.climate.hottest_air))),
            wind_loss: first(network.limits.wind_loss.as_ref(), at!(network.limits.wind_loss))
                .unwrap_or_else(|| assumed(WIND_LOSS, at!(network.limits.wind_loss))),
            power_line: first(network.limits.power_line.as_ref(), at!(network.limits.power_line))
                .unwrap_or_else(|| assumed(POWER_LINE, at!(network.limits.power_line))),
            locking_loss: first(network.limits.locking_loss.as_ref(), at!(network.limits.locking_loss))
                .unwrap_or_else(|| assumed(LOCKING_LOSS, at!(network.limits.locking_loss))),
            reciprocity: first(network.limits.reciprocity.as_ref(), at!(network.limits.reciprocity))
                .unwrap_or_else(|| assumed(RECIPROCITY, at!(network.limits.reciprocity))),
            voltage_drop: first(network.limits.voltage_drop.as_ref(), at!(network.limits.voltage_drop))
                .unwrap_or_else(|| assumed(VOLTAGE_DROP, at!(network.limits.voltage_drop))),
            voltage_reserve: first(network.limits.voltage_reserve.as_ref(), at!(network.limits.voltage_reserve))
                .unwrap_or_else(|| assumed(VOLTAGE_RESERVE, at!(network.limits.voltage_reserve))),
            practice: Practice::of(resolved),
        }
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

/// The hop's own clear-air climate, or its network's.
fn refractivity(resolved: &ResolvedHop<'_>) -> Option<([f64; 2], Place)> {
    let (hop, network) = (resolved.hop, resolved.network);
    let own = hop.climate.refractivity.as_ref().map(|own| (own, at!(hop.climate.refractivity)));
    let common = || network.climate.refractivity.as_ref().map(|own| (own, at!(network.climate.refractivity)));
    own.or_else(common).map(|(given, place)| ([given.log_k.0, given.dn_75.0], place))
}

/// The hop's own air, or its network's, each quantity for itself.
fn air(resolved: &ResolvedHop<'_>) -> WantedAir {
    let (hop, network) = (resolved.hop, resolved.network);
    let (own, common) = (&hop.climate.air, &network.climate.air);
    WantedAir {
        temperature: first(own.temperature.as_ref(), at!(hop.climate.air.temperature))
            .or_else(|| first(common.temperature.as_ref(), at!(network.climate.air.temperature))),
        pressure: first(own.pressure.as_ref(), at!(hop.climate.air.pressure))
            .or_else(|| first(common.pressure.as_ref(), at!(network.climate.air.pressure))),
        humidity: first(own.humidity.as_ref(), at!(hop.climate.air.humidity))
            .or_else(|| first(common.humidity.as_ref(), at!(network.climate.air.humidity))),
    }
}

/// The hop's own rain rate, or the greater of its sites', or the network's.
fn rain_rate(resolved: &ResolvedHop<'_>) -> Option<Wanted<MillimetresPerHour>> {
    let (hop, network) = (resolved.hop, resolved.network);
    let Both { a: site_a, b: site_b } = resolved.ends.each_ref().map(|end| end.site);
    let sites = [
        first(site_a.rain_rate.as_ref(), at!(site_a.rain_rate)),
        first(site_b.rain_rate.as_ref(), at!(site_b.rain_rate)),
    ];
    let wetter = |one: &Wanted<MillimetresPerHour>, other: &Wanted<MillimetresPerHour>| {
        one.value().0.total_cmp(&other.value().0)
    };
    first(hop.climate.rain_rate.as_ref(), at!(hop.climate.rain_rate))
        .or_else(|| sites.into_iter().flatten().max_by(wetter))
        .or_else(|| first(network.climate.rain_rate.as_ref(), at!(network.climate.rain_rate)))
}

pub(super) fn first<Q: Copy>(given: Option<&Given<Q>>, place: Place) -> Option<Wanted<Q>>
where
    Given<Q>: Clone,
{
    given.map(|given| asked(given, place))
}

fn asked<Q>(given: &Given<Q>, place: Place) -> Wanted<Q>
where
    Given<Q>: Clone,
{
    Wanted { given: given.clone(), place, assumed: false }
}

fn assumed<Q: crate::units::Quantity>(value: Q, place: Place) -> Wanted<Q> {
    Wanted { given: Given::assumed(value), place, assumed: true }
}
