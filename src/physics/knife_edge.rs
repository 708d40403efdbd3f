//! What a single sharp edge takes out of a ray that passes near it.
//!
//! The height of the edge over the straight line goes in as `ν`, the loss comes out: none with enough clearance, 6 dB
//! for an edge that just touches the line, and more above.

use super::clearance::first_fresnel_radius;
use crate::units::{Decibels, Gigahertz, Metres};

/// An edge lower than this costs nothing: a clearance of 0.55 of the first Fresnel radius.
const LOWEST: f64 = -0.78;

/// Height of an edge in wave terms, `ν`, for its height `h` over the straight line between the antennas; negative below
/// the line.
///
/// ```text
/// ν = h √( 2/λ (1/d_1 + 1/d_2) ) = √2 h / F_1
/// ```
///
/// Holds where `h` is small beside `d_1` and `d_2`, the distances to the antennas. Infinite at an antenna.
///
/// Source: Recommendation ITU-R P.526-15, section 4.1, equation (26) (equation number from memory, not seen).
#[must_use]
pub fn parameter(height: Metres, frequency: Gigahertz, near: Metres, far: Metres) -> f64 {
    std::f64::consts::SQRT_2 * height.0 / first_fresnel_radius(frequency, near, far).0
}

/// Loss over a single knife edge, `J(ν)`.
///
/// ```text
/// J(ν) = 6.9 + 20 lg( √( (ν - 0.1)² + 1 ) + ν - 0.1 )      ν > -0.78, else 0
/// ```
///
/// Within 0.15 dB of the exact integrals where it is not zero. Below, the true loss ripples around zero by less than
/// 1.5 dB; the zero is what planning counts with.
///
/// Source: Recommendation ITU-R P.526-15, section 4.1, equation (31).
#[must_use]
pub fn loss(nu: f64) -> Decibels {
    if nu > LOWEST {
        let x = nu - 0.1;
        Decibels(6.9 + 20.0 * libm::log10((x * x + 1.0).sqrt() + x))
    } else {
        Decibels(0.0)
    }
}
