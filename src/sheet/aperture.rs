//! How wide an antenna is.

use super::gain;
use super::reason::Reason;
use super::traced::{Traced, all, read};
use crate::network::Document;
use crate::physics::antenna;
use crate::spec::Antenna;
use crate::units::{Gigahertz, Millimetres};

/// A diameter that an antenna can have.
pub(super) fn above_zero(diameter: Millimetres) -> Result<Millimetres, Reason> {
    if diameter.0 > 0.0 { Ok(diameter) } else { Err(Reason::DiameterNotAboveZero) }
}

/// The diameter that is stated, or that of an antenna of the same gain.
pub(super) fn aperture(dish: &Document<Antenna>, frequency: &Traced<Gigahertz>) -> Traced<Millimetres> {
    all((&read!(dish.diameter), &gain::at(dish, frequency), frequency))
        .map(|(stated, gain, frequency)| stated.unwrap_or_else(|| antenna::estimated_diameter(frequency, gain)))
}
