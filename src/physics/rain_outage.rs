//! How often rain is heavy enough to break a hop.
//!
//! A path and the rain rate of its climate go in; out comes [`RainFade`], which answers both ways: the fade of a
//! percentage of the year, and the percentage for a margin. The method holds from 0.001 % to 1 % of the average year;
//! beyond, [`Outage`] says on which side and no more.

use super::rain::{self, Polarisation};
use crate::units::{Decibels, DecibelsPerKilometre, Degrees, Gigahertz, Metres, MillimetresPerHour, Percent};

/// Rarest share of the year the method speaks of.
pub const RAREST: Percent = Percent(0.001);

/// Commonest share of the year the method speaks of.
pub const COMMONEST: Percent = Percent(1.0);

/// Below this, rain is neglected.
const LOWEST_FREQUENCY: Gigahertz = Gigahertz(5.0);

/// Share of the average year in which rain takes more than the margin. Ordered from never to most.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub enum Outage {
    /// It does not rain here, by the rate given, or rain does not matter at this frequency.
    Never,
    /// Not more than [`RAREST`]; how much less, the method does not say.
    Below,
    /// Between [`RAREST`] and [`COMMONEST`].
    Within(Percent),
    /// At least [`COMMONEST`]; also without any margin at all.
    Above,
}

impl Outage {
    /// The most it can be: what a promise of availability must be measured against.
    #[must_use]
    pub fn at_most(self) -> Percent {
        match self {
            Self::Never => Percent(0.0),
            Self::Below => RAREST,
            Self::Within(share) => share,
            Self::Above => Percent(100.0),
        }
    }

    /// The least it can be.
    #[must_use]
    pub fn at_least(self) -> Percent {
        match self {
            Self::Never | Self::Below => Percent(0.0),
            Self::Within(share) => share,
            Self::Above => COMMONEST,
        }
    }
}

/// Why the method does not apply.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum OutOfRange {
    /// Above 100 GHz, or below 1 GHz.
    Frequency(Gigahertz),
    /// Longer than 60 km, or no distance.
    Distance(Metres),
    /// Less than no rain.
    RainRate(MillimetresPerHour),
}

/// Rain fading of one path at one frequency, with the quantities met on the way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RainFade {
    /// Loss for each kilometre at the rain rate exceeded for 0.01 % of the year, `γ_R`.
    pub specific_attenuation: DecibelsPerKilometre,
    /// Distance factor `r`: heavy rain falls in cells smaller than a long hop. At most 2.5.
    pub distance_factor: f64,
    /// Length of uniform rain that would fade as much, `d_eff`.
    pub effective_length: Metres,
    /// Fade exceeded for 0.01 % of the year by the method's step 4, `A_0.01`. Step 5 scales it and does not quite
    /// return to it: [`RainFade::attenuation`] at 0.01 % is about 0.2 % less.
    pub attenuation_0_01: Decibels,
    scaling: [f64; 3],
}

impl RainFade {
    /// Fading of a path of length `d` where the rain rate `R` is exceeded for 0.01 % of the average year.
    ///
    /// ```text
    /// γ_R    = k R^α
    /// r      = 1 / ( 0.477 d^0.633 R^(0.073 α) f^0.123 - 10.579 (1 - exp(-0.024 d)) ),   at most 2.5
    /// d_eff  = d r
    /// A_0.01 = γ_R d_eff
    /// ```
    ///
    /// Holds up to 60 km and 100 GHz, all over the world. Where the denominator is below 0.4, `r` is 2.5. Below 5 GHz
    /// rain is neglected, and without rain there is none: the fade is zero.
    ///
    /// Source: Recommendation ITU-R P.530-18, section 2.4.1, steps 1 to 4.
    ///
    /// # Errors
    /// The frequency, the distance or the rain rate is outside what the method covers.
    pub fn new(
        frequency: Gigahertz,
        polarisation: Polarisation,
        elevation: Degrees,
        distance: Metres,
        rate: MillimetresPerHour,
    ) -> Result<Self, OutOfRange> {
        if !(1.0..=100.0).contains(&frequency.0) {
            return Err(OutOfRange::Frequency(frequency));
        }
        if !(0.0..=60_000.0).contains(&distance.0) {
            return Err(OutOfRange::Distance(distance));
        }
        if !(0.0..f64::INFINITY).contains(&rate.0) {
            return Err(OutOfRange::RainRate(rate));
        }
        let coefficients = rain::coefficients(frequency, polarisation, elevation);
        let specific_attenuation = if frequency < LOWEST_FREQUENCY {
            DecibelsPerKilometre(0.0)
        } else {
            coefficients.specific_attenuation(rate)
        };
        let distance_factor = distance_factor(distance.0 / 1000.0, frequency.0, rate.0, coefficients.alpha);
        let effective_length = Metres(distance.0 * distance_factor);
        Ok(Self {
            specific_attenuation,
            distance_factor,
            effective_length,
            attenuation_0_01: specific_attenuation * effective_length,
            scaling: scaling(frequency),
        })
    }

    /// The same path where wet snow makes `F` times as much of every fade, see [`super::snow::factor`].
    ///
    /// Source: Recommendation ITU-R P.530-18, section 2.4.2.
    #[must_use]
    pub fn with_wet_snow(self, factor: f64) -> Self {
        Self { attenuation_0_01: Decibels(self.attenuation_0_01.0 * factor), ..self }
    }

    /// Fade exceeded for a percentage `p` of the average year, `A_p`; none outside 0.001 % to 1 %.
    ///
    /// ```text
    /// A_p = A_0.01 C_1 p^-(C_2 + C_3 lg p)
    /// ```
    ///
    /// Source: Recommendation ITU-R P.530-18, section 2.4.1, step 5.
    #[must_use]
    pub fn attenuation(&self, share: Percent) -> Option<Decibels> {
        (RAREST..=COMMONEST).contains(&share).then(|| self.fade(share))
    }

    /// Share of the average year in which rain takes more than `margin`, `M`.
    ///
    /// ```text
    /// lg p = [ -C_2 + √( C_2² - 4 C_3 L ) ] / 2 C_3,   L = lg( M / (A_0.01 C_1) )
    /// ```
    ///
    /// This solves `A_p = M`, a quadratic in `lg p`, for the root on which rarer rain fades more. Outside 0.001 % to
    /// 1 % only the side is told. No margin is [`Outage::Above`], whatever the rain.
    ///
    /// Source: Recommendation ITU-R P.530-18, section 2.4.1, step 5, solved for `p`.
    #[must_use]
    pub fn outage(&self, margin: Decibels) -> Outage {
        let [c_1, c_2, c_3] = self.scaling;
        if margin.0.is_nan() || margin.0 <= 0.0 {
            Outage::Above
        } else if self.attenuation_0_01.0 <= 0.0 {
            Outage::Never
        } else if margin >= self.fade(RAREST) {
            Outage::Below
        } else if margin <= self.fade(COMMONEST) {
            Outage::Above
        } else {
            let l = libm::log10(margin.0 / (self.attenuation_0_01.0 * c_1));
            let log_p = (-c_2 + (c_2 * c_2 - 4.0 * c_3 * l).sqrt()) / (2.0 * c_3);
            // The last bit must not leave the range that was just checked.
            Outage::Within(Percent(libm::exp10(log_p).clamp(RAREST.0, COMMONEST.0)))
        }
    }

    fn fade(&self, share: Percent) -> Decibels {
        let [c_1, c_2, c_3] = self.scaling;
        let p = share.0;
        Decibels(self.attenuation_0_01.0 * c_1 * libm::pow(p, -(c_2 + c_3 * libm::log10(p))))
    }
}

/// `r` for `d` in kilometres, `f` in gigahertz and `R` in millimetres an hour, see [`RainFade::new`].
fn distance_factor(d: f64, f: f64, r: f64, alpha: f64) -> f64 {
    let denominator = 0.477 * libm::pow(d, 0.633) * libm::pow(r, 0.073 * alpha) * libm::pow(f, 0.123)
        - 10.579 * (1.0 - libm::exp(-0.024 * d));
    if denominator < 0.4 { 2.5 } else { 1.0 / denominator }
}

/// `C_1`, `C_2` and `C_3`, which lead from 0.01 % of the year to other percentages.
///
/// ```text
/// C_0 = 0.12 + 0.4 lg (f/10)^0.8   for f ≥ 10 GHz, else 0.12
/// C_1 = 0.07^C_0 · 0.12^(1 - C_0)
/// C_2 = 0.855 C_0 + 0.546 (1 - C_0)
/// C_3 = 0.139 C_0 + 0.043 (1 - C_0)
/// ```
///
/// The power is read as part of the logarithm's argument. Read the other way, fades would differ by up to 4.3 %.
fn scaling(frequency: Gigahertz) -> [f64; 3] {
    let f = frequency.0;
    let c_0 = if f >= 10.0 { 0.12 + 0.4 * libm::log10(libm::pow(f / 10.0, 0.8)) } else { 0.12 };
    let c_1 = libm::pow(0.07, c_0) * libm::pow(0.12, 1.0 - c_0);
    let c_2 = 0.855 * c_0 + 0.546 * (1.0 - c_0);
    let c_3 = 0.139 * c_0 + 0.043 * (1.0 - c_0);
    [c_1, c_2, c_3]
}
