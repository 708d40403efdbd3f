//! What distance alone costs.
//!
//! Frequency and distance go in, the loss between two antennas without gain comes out. Nothing is in the way: gas, rain
//! and ground are for the other modules.

use std::f64::consts::PI;

use crate::units::{Decibels, Gigahertz, Metres};

/// Speed of light in vacuum, metres a second, exact by the definition of the metre.
pub const SPEED_OF_LIGHT: f64 = 299_792_458.0;

/// Wavelength in vacuum, `λ`.
///
/// ```text
/// λ = c / f
/// ```
///
/// Holds for every frequency above zero. Air shortens it by 0.03 %, which no formula here needs.
///
/// Source: definition, with the speed of light of the SI.
#[must_use]
pub fn wavelength(frequency: Gigahertz) -> Metres {
    Metres(SPEED_OF_LIGHT / (frequency.0 * 1e9))
}

/// Free-space loss between isotropic antennas, `L_bf`.
///
/// ```text
/// L_bf = 20 lg(4 π d / λ)
/// ```
///
/// `d` is the straight distance from antenna to antenna. Far field only: many wavelengths, and beyond `2 D² / λ` of the
/// dish. At `d = 0` the result is minus infinity.
///
/// Source: Recommendation ITU-R P.525-4, section 2.2.
#[must_use]
pub fn loss(frequency: Gigahertz, distance: Metres) -> Decibels {
    let (d, lambda) = (distance.0, wavelength(frequency).0);
    Decibels(20.0 * libm::log10(4.0 * PI * d / lambda))
}
