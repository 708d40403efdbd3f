//! The loss of a feeder for each length of it: coaxial cable and rectangular waveguide.
//!
//! Losses that a sheet states at some frequencies go in, that at another one comes out.

use std::f64::consts::PI;

use libm::{log, pow, sqrt};

use crate::units::{DecibelsPerKilometre, Gigahertz, Millimetres};

/// Conductivity of copper at 20 °C, `σ`, in S/m.
///
/// Source: IEC 60028, the international standard of resistance for copper.
pub const COPPER_CONDUCTIVITY: f64 = 58.0e6;

/// Speed of light, `c`, in m/s. Source: BIPM, The International System of Units.
const SPEED_OF_LIGHT: f64 = 299_792_458.0;

/// Permeability of the vacuum, `μ₀`, in H/m. Source: IUPAP, to nine digits.
const PERMEABILITY: f64 = 4e-7 * PI;

/// Decibels in a neper, 20 / ln 10.
const DECIBELS_IN_A_NEPER: f64 = 8.685_889_638_065_037;

/// The lowest frequency that a rectangular waveguide carries in its basic mode, TE10.
///
/// ```text
/// f_c = c / (2 a)
/// ```
///
/// Source: Pozar, Microwave Engineering, §3.3 (from memory).
#[must_use]
pub fn cutoff(width: Millimetres) -> Gigahertz {
    Gigahertz(SPEED_OF_LIGHT / (2.0 * width.0 * 1e-3) / 1e9)
}

/// Loss in the walls of a rectangular waveguide of smooth copper, in its basic mode, TE10; none at and below its [`cutoff`].
///
/// ```text
/// α = R_s (2 b π² + a³ k²) / (a³ b β k η) Np/m    R_s = √(π f μ₀ / σ)    β = √(k² - (π/a)²)
/// ```
///
/// `a` is the wide and `b` the narrow side inside. A real guide loses more: it is rough, plated, and joined. No guide of this size
/// loses less.
///
/// Source: Pozar, Microwave Engineering, §3.3 (from memory).
#[must_use]
pub fn copper_guide(width: Millimetres, height: Millimetres, frequency: Gigahertz) -> Option<DecibelsPerKilometre> {
    if frequency <= cutoff(width) {
        return None;
    }
    let (a, b, f) = (width.0 * 1e-3, height.0 * 1e-3, frequency.0 * 1e9);
    let k = 2.0 * PI * f / SPEED_OF_LIGHT;
    let beta = sqrt(k * k - (PI / a) * (PI / a));
    let surface = sqrt(PI * f * PERMEABILITY / COPPER_CONDUCTIVITY);
    let impedance = PERMEABILITY * SPEED_OF_LIGHT;
    let cubed = a * a * a;
    let nepers = surface * (2.0 * b * PI * PI + cubed * k * k) / (cubed * b * beta * k * impedance);
    Some(DecibelsPerKilometre(nepers * DECIBELS_IN_A_NEPER * 1000.0))
}

/// Loss of a rectangular waveguide at a frequency, from that at another one; none where it carries either of them not.
///
/// ```text
/// α(f) = α(f₀) α_c(f) / α_c(f₀)
/// ```
///
/// `α_c` is that of smooth copper, [`copper_guide`]: what roughness and plating add is taken to be the same share of it.
///
/// Source: as [`copper_guide`]; the share is common practice, no source.
#[must_use]
pub fn guide(
    [width, height]: [Millimetres; 2],
    stated: DecibelsPerKilometre,
    stated_at: Gigahertz,
    frequency: Gigahertz,
) -> Option<DecibelsPerKilometre> {
    let ideal = |frequency| copper_guide(width, height, frequency).map(|loss| loss.0);
    Some(DecibelsPerKilometre(stated.0 * ideal(frequency)? / ideal(stated_at)?))
}

/// Loss of a coaxial cable at a frequency, from that at another one.
///
/// ```text
/// α(f) = α(f₀) √(f / f₀)
/// ```
///
/// That of its conductors alone, whose current keeps to the skin. Above `f₀` the insulation adds to it, so the sheet rules: see
/// [`by_frequency`].
///
/// Source: skin effect; any textbook of transmission lines.
#[must_use]
pub fn coaxial(stated: DecibelsPerKilometre, stated_at: Gigahertz, frequency: Gigahertz) -> DecibelsPerKilometre {
    DecibelsPerKilometre(stated.0 * sqrt(frequency.0 / stated_at.0))
}

/// Loss at a frequency between those that are stated, in any order; none outside of them.
///
/// Straight between two points where both axes are logarithmic, as sheets draw it: exact for any power of the frequency.
///
/// Source: common practice, no source.
#[must_use]
pub fn by_frequency(
    stated: &[(Gigahertz, DecibelsPerKilometre)],
    frequency: Gigahertz,
) -> Option<DecibelsPerKilometre> {
    let below = stated.iter().filter(|(at, _)| *at <= frequency).max_by(|one, other| one.0.0.total_cmp(&other.0.0))?;
    let above = stated.iter().filter(|(at, _)| *at >= frequency).min_by(|one, other| one.0.0.total_cmp(&other.0.0))?;
    let ((low, from), (high, to)) = (below, above);
    // No logarithm of nothing: straight, then.
    if low.0 >= high.0 || from.0 <= 0.0 || to.0 <= 0.0 {
        let share = if high.0 > low.0 { (frequency.0 - low.0) / (high.0 - low.0) } else { 0.0 };
        return Some(DecibelsPerKilometre(from.0 + (to.0 - from.0) * share));
    }
    let slope = log(to.0 / from.0) / log(high.0 / low.0);
    Some(DecibelsPerKilometre(from.0 * pow(frequency.0 / low.0, slope)))
}
