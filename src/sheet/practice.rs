//! Thresholds of common practice: those of the network, the stated defaults where it is silent.

use super::assumption::Assumption;
use super::wanted::{Wanted, asked};
use crate::at;
use crate::network::ResolvedHop;
use crate::physics::ethernet_power::TURN_ON;
use crate::units::{Celsius, Kelvins, Metres, Millimetres, Ohms, Percent, Volts};

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
/// Longest grounding conductor, or the height of the antenna if that is more: common practice, no source.
pub const GROUND_LENGTH: Metres = Metres(6.0);
/// Tightest bend of a grounding conductor: common practice (NFPA 780 has 203 mm, from memory).
pub const GROUND_BEND: Millimetres = Millimetres(200.0);
/// Least room between two antennas on one support: common practice, no source.
pub const ANTENNA_GAP: Millimetres = Millimetres(100.0);
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
    /// Sun on a radio, if anybody gave it.
    pub sun_on_radio: Option<Wanted<Kelvins>>,
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
    /// Least room between two antennas.
    pub antenna_gap: Wanted<Millimetres>,
    /// Cable and wire to spare.
    pub spare: Wanted<Percent>,
    /// Coldest air, if anybody gave it.
    pub coldest_air: Option<Wanted<Celsius>>,
}

impl Practice {
    /// The thresholds of a hop.
    #[must_use]
    pub fn of(resolved: &ResolvedHop<'_>) -> Self {
        let (hop, network) = (resolved.hop, resolved.network);
        Self {
            start_voltage: asked!(network.limits.start_voltage).or_assume(TURN_ON, at!(network.limits.start_voltage)),
            contact_resistance: asked!(network.limits.contact_resistance)
                .or_assume(CONTACT_RESISTANCE, at!(network.limits.contact_resistance)),
            sun_on_jacket: asked!(network.limits.sun_on_jacket)
                .or_assume(SUN_ON_JACKET, at!(network.limits.sun_on_jacket)),
            sun_on_radio: asked!(network.limits.sun_on_radio).wanted(),
            hot_length: asked!(network.limits.hot_length).or_assume(LONGEST_RUN, at!(network.limits.hot_length)),
            gland_reserve: asked!(network.limits.gland_reserve)
                .or_assume(GLAND_RESERVE, at!(network.limits.gland_reserve)),
            drip_loop: asked!(network.limits.drip_loop).or_assume(DRIP_LOOP, at!(network.limits.drip_loop)),
            ground_length: asked!(network.limits.ground_length)
                .or_assume(GROUND_LENGTH, at!(network.limits.ground_length)),
            ground_bend: asked!(network.limits.ground_bend).or_assume(GROUND_BEND, at!(network.limits.ground_bend)),
            antenna_gap: asked!(network.limits.antenna_gap).or_assume(ANTENNA_GAP, at!(network.limits.antenna_gap)),
            spare: asked!(network.limits.spare).or_assume(SPARE, at!(network.limits.spare)),
            coldest_air: asked!(hop.climate.coldest_air).or(asked!(network.climate.coldest_air)).wanted(),
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
