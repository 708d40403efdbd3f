//! What stands in for what nobody stated.

use super::sentence::{Figure, sentences};
use crate::units::{Celsius, Decibels, Given, Kelvins, Ohms, Volts};

sentences! {
    /// A default that stands in for what nobody stated.
    Assumption in "assumed" {
        EarthRadius => "Effective Earth radius 4/3 of 6371 km (median refraction).";
        LowK { k: Figure } =>
            "Effective Earth radius in the worst month: k = {k}, by the length of the path (ITU-R P.530 §2.2.2, closed form from memory).";
        ClearanceCriteria { median: Figure, low: Figure } =>
            "Clearance {median} at the median k, {low} at the low k; what is not stated of it by ITU-R P.530-18 §2.2.2, temperate climate (from memory).";
        Air => "Reference atmosphere of ITU-R P.835-7 at the mean height of the antennas.";
        RestOfAir => "Reference atmosphere of ITU-R P.835-7 for what of the air is not written.";
        StraightGround =>
            "Ground straight between the points of a profile; no uncertainty of heights unless stated.";
        CablesInSun { hotter: Box<Given<Kelvins>>, contact: Box<Given<Ohms>> } =>
            "Outdoor cable {hotter} hotter than the hottest air, {contact} at each mated contact (common practice).";
        TurnOn { voltage: Volts } =>
            "Radios switched on at {voltage} where they state nothing (IEEE 802.3, from memory).";
        ColdestAir => "Coldest air not stated: cold limits of the equipment are not judged.";
        AcceptanceWindow { window: Decibels } => "Acceptance window ± {window} (common practice; none stated).";
        HottestAir { temperature: Celsius } => "Hottest air {temperature} (none stated).";
        VoltageReserve { reserve: Volts } => "Voltage reserve {reserve} (common practice; none stated).";
    }
}
