//! How far a sum of uncertain decibels may be off.
//!
//! Tolerances of independent parts go in, the tolerance of their sum comes out: of a predicted level, from those of
//! power, gains and meter.

use crate::units::Decibels;

/// Tolerance of a sum of independent parts, `u_c`: the root of the sum of squares.
///
/// ```text
/// u_c = √( Σ u_i² )
/// ```
///
/// All tolerances must be of one kind, all standard deviations or all limits of the same confidence, and so is the
/// result. Signs do not matter. Without parts it is zero.
///
/// Source: JCGM 100:2008, section 5.1.2, equation (10), with all sensitivities one (clause from memory, not seen).
#[must_use]
pub fn combined(tolerances: &[Decibels]) -> Decibels {
    Decibels(tolerances.iter().fold(0.0, |sum, tolerance| libm::hypot(sum, tolerance.0)))
}

/// Standard deviation behind a tolerance given as hard limits `±a`, any value between them as likely as any other.
///
/// ```text
/// u = a / √3
/// ```
///
/// Source: JCGM 100:2008, section 4.3.7, equation (7) (clause from memory, not seen).
#[must_use]
pub fn from_limits(limits: Decibels) -> Decibels {
    Decibels(limits.0.abs() / 3.0_f64.sqrt())
}

/// Standard deviation widened by a coverage factor `k`, `U`; with `k = 2` some 95 % of cases lie within.
///
/// ```text
/// U = k u_c
/// ```
///
/// Source: JCGM 100:2008, section 6.2.1, equation (18) (clause from memory, not seen).
#[must_use]
pub fn expanded(standard: Decibels, k: f64) -> Decibels {
    Decibels(k * standard.0)
}
