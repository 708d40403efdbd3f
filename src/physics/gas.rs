//! What oxygen and water vapour take out of a ray.
//!
//! [`Air`] makes a [`Spectrum`], a spectrum and a frequency make the loss for each kilometre: the full sum over the
//! spectral lines, 44 of oxygen and 35 of water vapour. How strong and how wide a line is depends on the air alone, so
//! both frequencies of a hop share one spectrum. Around 60 GHz oxygen takes ten decibels and more a kilometre; from
//! 71 GHz up both together take less than one.

use super::atmosphere::Air;
use super::gas_lines::{OXYGEN, WATER_VAPOUR};
use crate::units::{DecibelsPerKilometre, Gigahertz};

/// The lines of one parcel of air, as strong and as wide as they are there.
#[derive(Debug, Clone)]
pub struct Spectrum {
    oxygen: [SpectralLine; OXYGEN.len()],
    water_vapour: [SpectralLine; WATER_VAPOUR.len()],
    continuum: Continuum,
}

impl Spectrum {
    /// Strength and width of all lines in this air.
    ///
    /// ```text
    /// oxygen        S_i = a_1 · 10⁻⁷ p θ³ exp( a_2 (1 - θ) ),   θ = 300 / T
    ///               Δf  = a_3 · 10⁻⁴ ( p θ^(0.8 - a_4) + 1.1 e θ ),
    ///                     then √( Δf² + 2.25 · 10⁻⁶ ) for the Zeeman splitting
    ///               δ   = ( a_5 + a_6 θ ) · 10⁻⁴ (p + e) θ^0.8
    /// water vapour  S_i = b_1 · 10⁻¹ e θ^3.5 exp( b_2 (1 - θ) )
    ///               Δf  = b_3 · 10⁻⁴ ( p θ^b_4 + b_5 e θ^b_6 ),
    ///                     then 0.535 Δf + √( 0.217 Δf² + 2.1316 · 10⁻¹² f_i² / θ ) for the Doppler broadening
    ///               δ   = 0
    /// ```
    ///
    /// Source: Recommendation ITU-R P.676-13, Annex 1, equations (3), (6) and (7), Tables 1 and 2.
    #[must_use]
    pub fn of(air: &Air) -> Self {
        let (p, e, theta) = (air.dry_pressure.0, air.vapour_pressure.0, 300.0 / air.kelvin());
        let log_theta = libm::log(theta);
        let power = |exponent: f64| libm::exp(exponent * log_theta);
        // One exponent serves all lines of oxygen, for `a_4` is 0 throughout Table 1.
        let theta_0_8 = power(0.8);
        let widening = |a_4: f64| if a_4 == 0.0 { theta_0_8 } else { power(0.8 - a_4) };
        let (cubed, theta_3_5) = (theta * theta * theta, power(3.5));

        let oxygen = OXYGEN.map(|[f_i, a_1, a_2, a_3, a_4, a_5, a_6]| {
            let width = a_3 * 1e-4 * (p * widening(a_4) + 1.1 * e * theta);
            SpectralLine {
                centre: f_i,
                strength: a_1 * 1e-7 * p * cubed * libm::exp(a_2 * (1.0 - theta)) / f_i,
                width: (width * width + 2.25e-6).sqrt(),
                overlap: (a_5 + a_6 * theta) * 1e-4 * (p + e) * theta_0_8,
            }
        });
        let water_vapour = WATER_VAPOUR.map(|[f_i, b_1, b_2, b_3, b_4, b_5, b_6]| {
            let width = b_3 * 1e-4 * (p * power(b_4) + b_5 * e * power(b_6));
            SpectralLine {
                centre: f_i,
                strength: b_1 * 1e-1 * e * theta_3_5 * libm::exp(b_2 * (1.0 - theta)) / f_i,
                width: 0.535 * width + (0.217 * width * width + 2.1316e-12 * f_i * f_i / theta).sqrt(),
                overlap: 0.0,
            }
        });
        Self { oxygen, water_vapour, continuum: Continuum { p, theta, d: 5.6e-4 * (p + e) * theta_0_8 } }
    }

    /// Loss in clear air for each kilometre, `γ`.
    ///
    /// ```text
    /// γ = γ_o + γ_w
    /// ```
    ///
    /// Holds from 1 to 1000 GHz. Beyond, the sums still give a number, but lines that matter there are missing. Along a
    /// path near enough level for the air of its mean height to stand for all of it, which any hop is, the loss is this
    /// times the slant distance.
    ///
    /// Source: Recommendation ITU-R P.676-13, Annex 1, equation (1), and section 2.1 for terrestrial paths.
    #[must_use]
    pub fn specific_attenuation(&self, frequency: Gigahertz) -> DecibelsPerKilometre {
        self.oxygen(frequency) + self.water_vapour(frequency)
    }

    /// The part of the dry air, `γ_o`: lines of oxygen and the continuum beneath them.
    ///
    /// ```text
    /// γ_o = 0.1820 f ( Σ S_i F_i + N_D )
    /// ```
    ///
    /// `F_i` is the line shape, `N_D` the dry continuum. Range as [`Spectrum::specific_attenuation`].
    ///
    /// Source: Recommendation ITU-R P.676-13, Annex 1, equations (1) and (2).
    #[must_use]
    pub fn oxygen(&self, frequency: Gigahertz) -> DecibelsPerKilometre {
        let f = frequency.0;
        DecibelsPerKilometre(0.1820 * f * (sum(&self.oxygen, f) + self.continuum.at(f)))
    }

    /// The part of the water vapour, `γ_w`.
    ///
    /// ```text
    /// γ_w = 0.1820 f Σ S_i F_i
    /// ```
    ///
    /// The last line, at 1780 GHz, stands for all lines above 1000 GHz and gives most of the sum at 71 to 86 GHz. Range
    /// as [`Spectrum::specific_attenuation`].
    ///
    /// Source: Recommendation ITU-R P.676-13, Annex 1, equations (1) and (2).
    #[must_use]
    pub fn water_vapour(&self, frequency: Gigahertz) -> DecibelsPerKilometre {
        DecibelsPerKilometre(0.1820 * frequency.0 * sum(&self.water_vapour, frequency.0))
    }
}

/// A line in a parcel of air: `f_i`, `S_i / f_i`, `Δf`, `δ`.
#[derive(Debug, Clone, Copy)]
struct SpectralLine {
    centre: f64,
    strength: f64,
    width: f64,
    overlap: f64,
}

/// `Σ S_i F_i` at a frequency, with the shape `F_i` of a line of width `Δf` at `f_i` and the overlap `δ` of its
/// neighbours.
///
/// ```text
/// F_i = f / f_i [ (Δf - δ (f_i - f)) / ((f_i - f)² + Δf²) + (Δf - δ (f_i + f)) / ((f_i + f)² + Δf²) ]
/// ```
///
/// Source: Recommendation ITU-R P.676-13, Annex 1, equations (2) and (5).
fn sum(lines: &[SpectralLine], f: f64) -> f64 {
    let shapes = lines.iter().map(|&SpectralLine { centre: f_i, strength, width, overlap: delta }| {
        let (below, above) = (f_i - f, f_i + f);
        let (near, far) = (below * below + width * width, above * above + width * width);
        // Both fractions over one denominator: divisions are most of the time this takes.
        strength * ((width - delta * below) * far + (width - delta * above) * near) / (near * far)
    });
    f * shapes.sum::<f64>()
}

/// Dry continuum `N_D`: oxygen away from its lines, and nitrogen under pressure.
#[derive(Debug, Clone, Copy)]
struct Continuum {
    p: f64,
    theta: f64,
    d: f64,
}

impl Continuum {
    /// ```text
    /// N_D = f p θ² [ 6.14 · 10⁻⁵ / ( d (1 + (f/d)²) ) + 1.4 · 10⁻¹² p θ^1.5 / (1 + 1.9 · 10⁻⁵ f^1.5) ]
    /// d   = 5.6 · 10⁻⁴ (p + e) θ^0.8
    /// ```
    ///
    /// Source: Recommendation ITU-R P.676-13, Annex 1, equations (8) and (9).
    fn at(&self, f: f64) -> f64 {
        let Self { p, theta, d } = *self;
        let oxygen = 6.14e-5 / (d * (1.0 + (f / d) * (f / d)));
        let nitrogen = 1.4e-12 * p * theta * theta.sqrt() / (1.0 + 1.9e-5 * f * f.sqrt());
        f * p * theta * theta * (oxygen + nitrogen)
    }
}
