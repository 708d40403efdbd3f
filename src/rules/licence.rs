//! Rules on what codes of practice and licences let a hop radiate.

pub mod channel_off_raster;
pub mod eirp_above_code;
pub mod eirp_above_licence;
pub mod gain_below_code;
pub mod licence_not_stated;
pub mod power_above_code;
pub mod power_above_licence;
pub mod registration_missing;

use crate::at;
use crate::finding::Finding;
use crate::finding::rule::Severity;
use crate::network::Document;
use crate::place::Place;
use crate::sheet::{CodeSheet, Confidence, Direction};
use crate::spec::Antenna;
use crate::units::{Dbm, Quantity as _};

/// What every help of this family ends with.
const ASK: &str = "check with the national regulator";

/// Where the gain of an antenna is written.
fn gain_at(antenna: &Document<Antenna>) -> Place {
    if antenna.gain_by_frequency.is_empty() { at!(antenna.gain) } else { at!(antenna.gain_by_frequency) }
}

/// A limit that was not seen in a public copy of the rule is no more than a warning.
fn soften(finding: &mut Finding, known: Confidence) {
    if known < Confidence::Published {
        finding.at_most(Severity::Warning);
    }
}

/// The power to set, rounded so that it complies, and what to say where the radio goes no lower.
fn lower(direction: &Direction<'_>, most: Dbm) -> String {
    let (power, range) = (most.rounded_down(), &direction.sender.radio.transmit_power);
    if power < range.min.value {
        format!("{power} would do, but this radio goes no lower than {}", range.min)
    } else {
        format!("set {power} or less")
    }
}

/// The power, or the larger antenna, that the code allows.
fn mend(direction: &Direction<'_>, code: &CodeSheet, most: Dbm) -> String {
    let gain = code.gain_mend.map(|gain| format!("; or take an antenna of {gain} or more")).unwrap_or_default();
    format!("{}{gain}; {ASK}", lower(direction, most))
}
