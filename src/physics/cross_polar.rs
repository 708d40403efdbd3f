//! How often two carriers of crossed polarisations, sent on one channel, spoil each other.
//!
//! Antennas keep the two apart by their cross-polar discrimination. Layers of clear air and rain turn a part of one
//! carrier into the other, and what then leaks over is interference that no margin over noise helps against. Clear air
//! is told by the occurrence of multipath fading ([`super::multipath::Multipath::occurrence`]), rain by its fade
//! ([`super::rain_outage::RainFade::attenuation_0_01`]).
//!
//! Of Recommendation ITU-R P.530-18, section 4, the text was not seen: the period of `P_0`, the coefficient `U_0` and
//! the improvement by a canceller are from memory, the rest agrees with independent public computations.

use super::rain_outage::Outage;
use crate::units::{Decibels, Gigahertz, Metres, Percent};

/// Lowest and highest frequency of the method in rain.
pub const IN_RAIN: [Gigahertz; 2] = [Gigahertz(8.0), Gigahertz(35.0)];

/// Discrimination of two antennas together in clear air: so much better than the guaranteed one, and not beyond
/// [`BEST`], `XPD_0`.
const BETTER: Decibels = Decibels(5.0);
const BEST: Decibels = Decibels(40.0);

/// `U_0` of rain (from memory, not seen; 9 dB bounds all measurements).
const COEFFICIENT: f64 = 15.0;

/// Greatest `m` of the method in rain, where [`CrossRain::exponent`] is −5.8.
const MOST: f64 = 40.0;

/// The least `n` the method speaks of: 0.001 % of the year, and the greatest: 1 %.
const SHARES: [f64; 2] = [-3.0, 0.0];

/// Speed of light in vacuum, metres a nanosecond.
const LIGHT: f64 = 0.299_792_458;

/// Two carriers of crossed polarisations on one channel, as radios and antennas hold them apart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoChannel {
    /// Carrier over interference with which a state still holds its error ratio, `C_0/I`.
    pub needed: Decibels,
    /// What a canceller of cross-polar interference improves it by, `XPIF`. None without one.
    pub improvement: Decibels,
}

/// The antennas that send.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Senders {
    /// One antenna for both polarisations.
    One,
    /// One each, so far above each other.
    Two(Metres, Gigahertz),
}

/// Why a method does not apply.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum OutOfRange {
    /// Rain below 8 or above 35 GHz.
    Frequency(Gigahertz),
    /// Less than no multipath fading, or no number.
    Occurrence(Percent),
    /// Less than no rain, or no number.
    Fade(Decibels),
}

/// Crossed carriers in clear air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CrossClearAir {
    /// Discrimination of the antennas, `XPD_0`.
    pub discrimination: Decibels,
    /// Multipath activity of the worst month, `η`.
    pub activity: f64,
    /// Share of it that two antennas do not suffer, as a factor, `k_XP`.
    pub senders: f64,
    /// Part of a year's worst month with multipath, `P_0`.
    occurrence: f64,
}

impl CrossClearAir {
    /// Crossed carriers over a path with multipath fading.
    ///
    /// ```text
    /// XPD_0 = XPD_g + 5 dB for XPD_g ≤ 35 dB, else 40 dB
    /// η     = 1 - exp( -0.2 P_0^0.75 )
    /// k_XP  = 0.7 from one antenna, 1 - 0.3 exp( -4·10⁻⁶ (s_t/λ)² ) from two, one `s_t` above the other
    /// ```
    ///
    /// `XPD_g` is the least discrimination on the axis that both antennas guarantee, `P_0` the multipath occurrence of the
    /// worst month as a fraction (that it is the month and not the year is from memory).
    ///
    /// Source: Recommendation ITU-R P.530-18, section 4.1, steps 1 to 3 (text not seen).
    ///
    /// # Errors
    /// The occurrence is negative or no number.
    pub fn new(guaranteed: Decibels, senders: Senders, occurrence: Percent) -> Result<Self, OutOfRange> {
        if !(0.0..f64::INFINITY).contains(&occurrence.0) {
            return Err(OutOfRange::Occurrence(occurrence));
        }
        let better = guaranteed + BETTER;
        let part = occurrence.0 / 100.0;
        Ok(Self {
            discrimination: if better < BEST { better } else { BEST },
            activity: -libm::expm1(-0.2 * libm::pow(part, 0.75)),
            senders: match senders {
                Senders::One => 0.7,
                Senders::Two(apart, frequency) => {
                    let wavelengths = apart.0 * frequency.0 / LIGHT;
                    1.0 - 0.3 * libm::exp(-4e-6 * wavelengths * wavelengths)
                }
            },
            occurrence: part,
        })
    }

    /// What multipath of this path leaves of the discrimination, `C = XPD_0 + Q`; none without multipath.
    ///
    /// ```text
    /// Q = -10 lg( k_XP η / P_0 )
    /// ```
    ///
    /// Source: Recommendation ITU-R P.530-18, section 4.1, steps 3 and 4 (text not seen).
    #[must_use]
    pub fn left(&self) -> Option<Decibels> {
        let spoilt = self.senders * self.activity / self.occurrence;
        (self.occurrence > 0.0).then(|| self.discrimination - Decibels(10.0 * libm::log10(spoilt)))
    }

    /// Margin over the interference of the other carrier, `M_XPD`; none without multipath.
    ///
    /// ```text
    /// M_XPD = C - C_0/I + XPIF
    /// ```
    ///
    /// Source: Recommendation ITU-R P.530-18, section 4.1, step 5 (text not seen).
    #[must_use]
    pub fn margin(&self, carriers: &CoChannel) -> Option<Decibels> {
        Some(self.left()? - carriers.needed + carriers.improvement)
    }

    /// Share of the worst month in which the other carrier is too strong, `P_XP`: at most all of it.
    ///
    /// ```text
    /// P_XP = P_0 10^(-M_XPD/10)
    /// ```
    ///
    /// Source: Recommendation ITU-R P.530-18, section 4.1, step 5 (text not seen).
    #[must_use]
    pub fn worst_month(&self, carriers: &CoChannel) -> Percent {
        let margin = self.margin(carriers).unwrap_or_default();
        Percent((100.0 * self.occurrence * libm::exp10(-margin.0 / 10.0)).min(100.0))
    }
}

/// Crossed carriers in rain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CrossRain {
    /// Discrimination of rain that fades by 1 dB, `U`.
    pub at_one_decibel: f64,
    /// How much discrimination a tenfold fade costs, `V`.
    pub slope: f64,
    /// Fade exceeded for 0.01 % of the year, `A_0.01`.
    fade: Decibels,
}

impl CrossRain {
    /// Crossed carriers in the rain of a path.
    ///
    /// ```text
    /// XPD = U - V lg CPA,   U = 15 + 30 lg f
    /// V   = 12.8 f^0.19     8 GHz ≤ f ≤ 20 GHz
    ///       22.6            20 GHz < f ≤ 35 GHz
    /// ```
    ///
    /// Source: Recommendation ITU-R P.530-18, section 4.2.1 (text not seen; the 15 dB from memory). Above 35 GHz there is no
    /// method.
    ///
    /// # Errors
    /// The frequency lies outside [`IN_RAIN`], or the fade is negative or no number.
    pub fn new(frequency: Gigahertz, fade: Decibels) -> Result<Self, OutOfRange> {
        let f = frequency.0;
        if !(IN_RAIN[0].0..=IN_RAIN[1].0).contains(&f) {
            return Err(OutOfRange::Frequency(frequency));
        }
        if !(0.0..f64::INFINITY).contains(&fade.0) {
            return Err(OutOfRange::Fade(fade));
        }
        let slope = if f <= 20.0 { 12.8 * libm::pow(f, 0.19) } else { 22.6 };
        Ok(Self { at_one_decibel: COEFFICIENT + 30.0 * libm::log10(f), slope, fade })
    }

    /// Fade by rain that leaves just the discrimination the carriers need, the equivalent path attenuation `A_p`.
    ///
    /// ```text
    /// A_p = 10^( (U - C_0/I + XPIF) / V )
    /// ```
    ///
    /// Source: Recommendation ITU-R P.530-18, section 4.2.2, step 2 (text not seen).
    #[must_use]
    pub fn equivalent(&self, carriers: &CoChannel) -> Decibels {
        let left = self.at_one_decibel - carriers.needed.0 + carriers.improvement.0;
        Decibels(libm::exp10(left / self.slope))
    }

    /// `m` of that fade, at most 40.
    ///
    /// ```text
    /// m = 23.26 lg( A_p / (0.12 A_0.01) )
    /// ```
    ///
    /// Source: Recommendation ITU-R P.530-18, section 4.2.2, step 3 (text not seen).
    #[must_use]
    pub fn m(&self, carriers: &CoChannel) -> f64 {
        (23.26 * libm::log10(self.equivalent(carriers).0 / (0.12 * self.fade.0))).min(MOST)
    }

    /// Logarithm of the share of the year in per cent, as the method computes it within its range and beyond, `n`.
    ///
    /// ```text
    /// n = ( -12.7 + √(161.23 - 4 m) ) / 2
    /// ```
    ///
    /// Source: Recommendation ITU-R P.530-18, section 4.2.2, step 3 (text not seen).
    #[must_use]
    pub fn exponent(&self, carriers: &CoChannel) -> f64 {
        f64::midpoint(-12.7, (161.23 - 4.0 * self.m(carriers)).sqrt())
    }

    /// Share of the average year in which rain makes the other carrier too strong, `P_XPR`.
    ///
    /// ```text
    /// P_XPR = 10^n %     -3 ≤ n ≤ 0
    /// ```
    ///
    /// Beyond, on which side and no more: `n` of -3 and 0 are the bounds of [`Outage`].
    ///
    /// Source: Recommendation ITU-R P.530-18, section 4.2.2, step 4 (text not seen).
    #[must_use]
    pub fn year(&self, carriers: &CoChannel) -> Outage {
        if self.fade.0 <= 0.0 {
            return Outage::Never;
        }
        let n = self.exponent(carriers);
        match SHARES {
            [least, _] if n < least => Outage::Below,
            [_, most] if n > most => Outage::Above,
            _ => Outage::Within(Percent(libm::exp10(n))),
        }
    }
}

/// Outage in rain of a hop whose carriers are crossed: both come of the same rain, so the larger of the two.
///
/// Source: Recommendation ITU-R P.530-18, on the prediction of total outage (from memory, not seen).
#[must_use]
pub fn larger(fades: Outage, crosses: Outage) -> Outage {
    if crosses > fades { crosses } else { fades }
}
