//! What oxygen and water vapour take out of a ray.
//!
//! Frequency and [`Air`] go in, loss for each kilometre comes out: the full sum over the spectral lines, 44 of oxygen
//! and 35 of water vapour. Around 60 GHz oxygen takes ten decibels and more a kilometre; from 71 GHz up both together
//! take less than one.

use super::atmosphere::Air;
use super::gas_lines::{OXYGEN, WATER_VAPOUR};
use crate::units::{Decibels, DecibelsPerKilometre, Gigahertz, Metres};

/// Loss in clear air for each kilometre, `γ`.
///
/// ```text
/// γ = γ_o + γ_w
/// ```
///
/// Holds from 1 to 1000 GHz. Beyond, the sums still give a number, but lines that matter there are missing.
///
/// Source: Recommendation ITU-R P.676-13, Annex 1, equation (1).
#[must_use]
pub fn specific_attenuation(frequency: Gigahertz, air: &Air) -> DecibelsPerKilometre {
    oxygen(frequency, air) + water_vapour(frequency, air)
}

/// Loss in clear air along a path, `A`.
///
/// ```text
/// A = γ r_0
/// ```
///
/// For a path that is near enough level for one [`Air`], that of its mean height, to stand for all of it: any hop.
///
/// Source: Recommendation ITU-R P.676-13, Annex 1, section 2.1, terrestrial paths.
#[must_use]
pub fn loss(frequency: Gigahertz, air: &Air, distance: Metres) -> Decibels {
    specific_attenuation(frequency, air) * distance
}

/// The part of the dry air, `γ_o`: lines of oxygen and the continuum beneath them.
///
/// ```text
/// γ_o  = 0.1820 f ( Σ S_i F_i + N_D )
/// S_i  = a_1 · 10⁻⁷ p θ³ exp( a_2 (1 - θ) ),   θ = 300 / T
/// Δf   = a_3 · 10⁻⁴ ( p θ^(0.8 - a_4) + 1.1 e θ ),   then √( Δf² + 2.25 · 10⁻⁶ ) for the Zeeman splitting
/// δ    = ( a_5 + a_6 θ ) · 10⁻⁴ (p + e) θ^0.8
/// ```
///
/// `F_i` is the line shape, `N_D` the dry continuum. Range as [`specific_attenuation`].
///
/// Source: Recommendation ITU-R P.676-13, Annex 1, equations (1) to (3), (6) and (7), and Table 1.
#[must_use]
pub fn oxygen(frequency: Gigahertz, air: &Air) -> DecibelsPerKilometre {
    let (f, p, e, theta) = symbols(frequency, air);
    let lines = OXYGEN.iter().map(|&[f_i, a_1, a_2, a_3, a_4, a_5, a_6]| {
        let s_i = a_1 * 1e-7 * p * theta * theta * theta * libm::exp(a_2 * (1.0 - theta));
        let width = a_3 * 1e-4 * (p * libm::pow(theta, 0.8 - a_4) + 1.1 * e * theta);
        let width = (width * width + 2.25e-6).sqrt();
        let delta = (a_5 + a_6 * theta) * 1e-4 * (p + e) * libm::pow(theta, 0.8);
        s_i * line_shape(f, f_i, width, delta)
    });
    DecibelsPerKilometre(0.1820 * f * (lines.sum::<f64>() + dry_continuum(f, p, e, theta)))
}

/// The part of the water vapour, `γ_w`.
///
/// ```text
/// γ_w  = 0.1820 f Σ S_i F_i
/// S_i  = b_1 · 10⁻¹ e θ^3.5 exp( b_2 (1 - θ) ),   θ = 300 / T
/// Δf   = b_3 · 10⁻⁴ ( p θ^b_4 + b_5 e θ^b_6 ),
///        then 0.535 Δf + √( 0.217 Δf² + 2.1316 · 10⁻¹² f_i² / θ ) for the Doppler broadening
/// δ    = 0
/// ```
///
/// The last line, at 1780 GHz, stands for all lines above 1000 GHz and gives most of the sum at 71 to 86 GHz. Range as
/// [`specific_attenuation`].
///
/// Source: Recommendation ITU-R P.676-13, Annex 1, equations (1) to (3), (6) and (7), and Table 2.
#[must_use]
pub fn water_vapour(frequency: Gigahertz, air: &Air) -> DecibelsPerKilometre {
    let (f, p, e, theta) = symbols(frequency, air);
    let lines = WATER_VAPOUR.iter().map(|&[f_i, b_1, b_2, b_3, b_4, b_5, b_6]| {
        let s_i = b_1 * 1e-1 * e * libm::pow(theta, 3.5) * libm::exp(b_2 * (1.0 - theta));
        let width = b_3 * 1e-4 * (p * libm::pow(theta, b_4) + b_5 * e * libm::pow(theta, b_6));
        let width = 0.535 * width + (0.217 * width * width + 2.1316e-12 * f_i * f_i / theta).sqrt();
        s_i * line_shape(f, f_i, width, 0.0)
    });
    DecibelsPerKilometre(0.1820 * f * lines.sum::<f64>())
}

/// `f` in gigahertz, `p` and `e` in hectopascals, `θ`.
fn symbols(frequency: Gigahertz, air: &Air) -> (f64, f64, f64, f64) {
    (frequency.0, air.dry_pressure.0, air.vapour_pressure.0, 300.0 / air.kelvin())
}

/// Shape `F_i` of a line of width `Δf` at `f_i`, with the overlap `δ` of its neighbours.
///
/// ```text
/// F_i = f / f_i [ (Δf - δ (f_i - f)) / ((f_i - f)² + Δf²) + (Δf - δ (f_i + f)) / ((f_i + f)² + Δf²) ]
/// ```
///
/// Source: Recommendation ITU-R P.676-13, Annex 1, equation (5).
fn line_shape(f: f64, f_i: f64, width: f64, delta: f64) -> f64 {
    let wing = |apart: f64| (width - delta * apart) / (apart * apart + width * width);
    f / f_i * (wing(f_i - f) + wing(f_i + f))
}

/// Dry continuum `N_D`: oxygen away from its lines, and nitrogen under pressure.
///
/// ```text
/// N_D = f p θ² [ 6.14 · 10⁻⁵ / ( d (1 + (f/d)²) ) + 1.4 · 10⁻¹² p θ^1.5 / (1 + 1.9 · 10⁻⁵ f^1.5) ]
/// d   = 5.6 · 10⁻⁴ (p + e) θ^0.8
/// ```
///
/// Source: Recommendation ITU-R P.676-13, Annex 1, equations (8) and (9).
fn dry_continuum(f: f64, p: f64, e: f64, theta: f64) -> f64 {
    let d = 5.6e-4 * (p + e) * libm::pow(theta, 0.8);
    let oxygen = 6.14e-5 / (d * (1.0 + (f / d) * (f / d)));
    let nitrogen = 1.4e-12 * p * libm::pow(theta, 1.5) / (1.0 + 1.9e-5 * libm::pow(f, 1.5));
    f * p * theta * theta * (oxygen + nitrogen)
}
