//! Thresholds of common practice: those of the network, the stated defaults where it is silent.

use super::assumption::Assumption;
use super::target::Wanted;
use crate::at;
use crate::network::{Document, ResolvedHop};
use crate::physics::ethernet_power::TURN_ON;
use crate::place::Place;
use crate::spec::Network;
use crate::units::{Celsius, Given, Kelvins, Metres, Millimetres, Ohms, Percent, Quantity, Volts};

/// Resistance of one mated contact, aged: common practice, no source (IEC 60603-7 asks for 20 mΩ when new, from memory).
pub const CONTACT_RESISTANCE: Ohms = Ohms(0.05);
/// How much hotter than the air a black jacket gets in the sun: common practice, no source.
pub const SUN_ON_JACKET: Kelvins = Kelvins(20.0);
/// Longest channel of balanced cable for data: ISO/IEC 11801-1 and IEEE 802.3.
pub const LONGEST_RUN: Metres = Metres(100.0);
/// How far a diameter stays inside a gland's window: common practice, no source.
pub const GLAND_RESERVE: Millimetres = Millimetres(0.2);
/// How far a drip loop hangs below the port: common practice, no source.
pub const DRIP_LOOP: Millimetres = Millimetres(150.0);
/// Longest grounding conductor: NEC 800.100(A)(4), 20 ft at dwellings (from memory, not seen).
pub const GROUND_LENGTH: Metres = Metres(6.0);
/// Tightest bend of a grounding conductor: common practice (NFPA 780 has 203 mm, from memory).
pub const GROUND_BEND: Millimetres = Millimetres(200.0);
/// Cable and wire beyond the length laid: common practice, no source.
pub const SPARE: Percent = Percent(10.0);

/// The thresholds that hold for a hop, each with where it is written.
#[derive(Debug, Clone)]
pub struct Practice {
    /// Voltage at which a radio has switched on.
    pub start_voltage: Wanted<Volts>,
    /// Resistance of one mated contact.
    pub contact_resistance: Wanted<Ohms>,
    /// Sun on a black jacket.
    pub sun_on_jacket: Wanted<Kelvins>,
    /// Longest channel, counted in cable at 20 °C.
    pub hot_length: Wanted<Metres>,
    /// Room of a cable within its gland.
    pub gland_reserve: Wanted<Millimetres>,
    /// Depth of a drip loop.
    pub drip_loop: Wanted<Millimetres>,
    /// Longest grounding conductor.
    pub ground_length: Wanted<Metres>,
    /// Tightest bend of a grounding conductor.
    pub ground_bend: Wanted<Millimetres>,
    /// Cable and wire to spare.
    pub spare: Wanted<Percent>,
    /// Coldest air, if anybody gave it.
    pub coldest_air: Option<Wanted<Celsius>>,
}

impl Practice {
    /// The thresholds of a hop.
    #[must_use]
    pub fn of(resolved: &ResolvedHop<'_>) -> Self {
        let (hop, network): (_, &Document<Network>) = (resolved.hop, resolved.network);
        let limits = &network.limits;
        let cold = hop.climate.coldest_air.as_ref().map(|given| (given, at!(hop.climate.coldest_air)));
        let common = network.climate.coldest_air.as_ref().map(|given| (given, at!(network.climate.coldest_air)));
        Self {
            start_voltage: wanted(limits.start_voltage.as_ref(), TURN_ON, at!(network.limits.start_voltage)),
            contact_resistance: wanted(
                limits.contact_resistance.as_ref(),
                CONTACT_RESISTANCE,
                at!(network.limits.contact_resistance),
            ),
            sun_on_jacket: wanted(limits.sun_on_jacket.as_ref(), SUN_ON_JACKET, at!(network.limits.sun_on_jacket)),
            hot_length: wanted(limits.hot_length.as_ref(), LONGEST_RUN, at!(network.limits.hot_length)),
            gland_reserve: wanted(limits.gland_reserve.as_ref(), GLAND_RESERVE, at!(network.limits.gland_reserve)),
            drip_loop: wanted(limits.drip_loop.as_ref(), DRIP_LOOP, at!(network.limits.drip_loop)),
            ground_length: wanted(limits.ground_length.as_ref(), GROUND_LENGTH, at!(network.limits.ground_length)),
            ground_bend: wanted(limits.ground_bend.as_ref(), GROUND_BEND, at!(network.limits.ground_bend)),
            spare: wanted(limits.spare.as_ref(), SPARE, at!(network.limits.spare)),
            coldest_air: cold.or(common).map(|(given, place)| Wanted { given: given.clone(), place, assumed: false }),
        }
    }

    /// The defaults that stand in for what nobody stated, a sentence each.
    #[must_use]
    pub fn assumptions(&self) -> Vec<Assumption> {
        let mut list = vec![Assumption::CablesInSun {
            hotter: Box::new(self.sun_on_jacket.given.clone()),
            contact: Box::new(self.contact_resistance.given.clone()),
        }];
        if self.start_voltage.assumed {
            list.push(Assumption::TurnOn { voltage: TURN_ON });
        }
        if self.coldest_air.is_none() {
            list.push(Assumption::ColdestAir);
        }
        list
    }
}

fn wanted<Q: Quantity>(given: Option<&Given<Q>>, default: Q, place: Place) -> Wanted<Q> {
    Wanted { given: given.cloned().unwrap_or_else(|| Given::assumed(default)), place, assumed: given.is_none() }
}
