//! What fog takes out of a ray.
//!
//! Frequency, temperature and the water that hangs in the air go in, loss for each kilometre comes out. Small beside
//! rain: thick fog costs 2 dB/km at 80 GHz.

use super::atmosphere::ICE_POINT;
use crate::units::{Celsius, Decibels, DecibelsPerKilometre, Gigahertz, GramsPerCubicMetre, Metres};

/// Water in fog one sees 300 m through.
///
/// Source: Recommendation ITU-R P.840-9, section 1 (clause from memory, not seen).
pub const MEDIUM_FOG: GramsPerCubicMetre = GramsPerCubicMetre(0.05);

/// Water in fog one sees 50 m through. Source as [`MEDIUM_FOG`].
pub const THICK_FOG: GramsPerCubicMetre = GramsPerCubicMetre(0.5);

/// Loss in fog for each kilometre, `γ_c`.
///
/// ```text
/// γ_c = K_l M
/// ```
///
/// Holds up to 200 GHz, for droplets below 0.1 mm, `M` grams of them in a cubic metre. Rain is for [`super::rain`].
///
/// Source: Recommendation ITU-R P.840-9, section 2, equation (1).
#[must_use]
pub fn specific_attenuation(
    frequency: Gigahertz,
    temperature: Celsius,
    water: GramsPerCubicMetre,
) -> DecibelsPerKilometre {
    DecibelsPerKilometre(coefficient(frequency, temperature) * water.0)
}

/// Loss in fog along a path that lies in it all the way.
///
/// ```text
/// A = γ_c d
/// ```
///
/// Source: definition of specific attenuation.
#[must_use]
pub fn loss(frequency: Gigahertz, temperature: Celsius, water: GramsPerCubicMetre, distance: Metres) -> Decibels {
    specific_attenuation(frequency, temperature, water) * distance
}

/// Specific attenuation coefficient of liquid water, `K_l`, in (dB/km)/(g/m³).
///
/// ```text
/// K_l = 0.819 f / ( ε'' (1 + η²) ),   η = (2 + ε') / ε''
/// ε'' = f (ε_0 - ε_1) / ( f_p (1 + (f/f_p)²) ) + f (ε_1 - ε_2) / ( f_s (1 + (f/f_s)²) )
/// ε'  = (ε_0 - ε_1) / (1 + (f/f_p)²) + (ε_1 - ε_2) / (1 + (f/f_s)²) + ε_2
/// ε_0 = 77.66 + 103.3 (θ - 1),   ε_1 = 0.0671 ε_0,   ε_2 = 3.52
/// f_p = 20.20 - 146 (θ - 1) + 316 (θ - 1)²,   f_s = 39.8 f_p   GHz
/// θ   = 300 / T
/// ```
///
/// Water below freezing is supercooled and still liquid. Range as [`specific_attenuation`].
///
/// Source: Recommendation ITU-R P.840-9, section 2, equations (2) to (11) (equation numbers from memory, not seen).
#[must_use]
pub fn coefficient(frequency: Gigahertz, temperature: Celsius) -> f64 {
    let f = frequency.0;
    let x = 300.0 / (temperature.0 + ICE_POINT) - 1.0;
    let e_0 = 77.66 + 103.3 * x;
    let e_1 = 0.0671 * e_0;
    let e_2 = 3.52;
    let f_p = 20.20 - 146.0 * x + 316.0 * x * x;
    let f_s = 39.8 * f_p;
    let primary = (e_0 - e_1) / (1.0 + (f / f_p) * (f / f_p));
    let secondary = (e_1 - e_2) / (1.0 + (f / f_s) * (f / f_s));
    let e_imaginary = f / f_p * primary + f / f_s * secondary;
    let e_real = primary + secondary + e_2;
    let eta = (2.0 + e_real) / e_imaginary;
    0.819 * f / (e_imaginary * (1.0 + eta * eta))
}
