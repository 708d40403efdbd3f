//! How hard it rains where, from what weather services publish.
//!
//! The rain totals and mean temperatures of twelve months go in; out comes [`RainClimate`], which says how often it
//! rains and which rate is exceeded for a share of the average year. Nothing but two tables of normals is needed, so it
//! serves wherever the map of [`super::rain_map`] is not at hand.

use crate::units::{Celsius, Millimetres, MillimetresPerHour, Percent};

/// Days of the months, `N_ii`, in the average of leap years and others.
const DAYS: [f64; 12] = [31.0, 28.25, 31.0, 30.0, 31.0, 30.0, 31.0, 31.0, 30.0, 31.0, 30.0, 31.0];

/// Their sum.
const YEAR: f64 = 365.25;

/// The most a month can rain, in percent of its time.
const RAINIEST: f64 = 70.0;

/// [`RainClimate::rate`] halves until it knows `ln R` to this: one part in ten thousand million of the rate.
const TOLERANCE: f64 = 1e-10;

/// Normals of one calendar month.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Month {
    /// Mean depth of all rain in the month, `MT`.
    pub rain: Millimetres,
    /// Mean temperature two metres above the ground, `T`.
    pub temperature: Celsius,
}

/// A month, 1 to 12, whose rain is negative, or whose rain or temperature is no number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NoClimate(pub usize, pub Month);

/// Rain statistics of a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RainClimate {
    /// For each month the mean rate while it rains, `r` in mm/h, and the percentage of time it does, `P_0`.
    months: [(f64, f64); 12],
}

impl RainClimate {
    /// The climate of a place with these normals, January first.
    ///
    /// ```text
    /// r   = 0.5874 exp(0.0883 T)    T ≥ 0 °C, else 0.5874          mm/h
    /// P_0 = 100 MT / (24 N r)                                      %
    /// where P_0 > 70:   P_0 = 70,   r = (100/70) MT / (24 N)
    /// ```
    ///
    /// Source: Recommendation ITU-R P.837-7, Annex 1, steps 1 to 5 (step numbers from memory, not seen).
    ///
    /// # Errors
    /// A month with less than no rain, or without numbers.
    pub fn new(normals: &[Month; 12]) -> Result<Self, NoClimate> {
        let mut months = [(0.0, 0.0); 12];
        for (index, month) in normals.iter().enumerate() {
            let (mt, t) = (month.rain.0, month.temperature.0);
            if !(mt >= 0.0 && mt.is_finite() && t.is_finite()) {
                return Err(NoClimate(index + 1, *month));
            }
            let hourly = mt / (24.0 * DAYS[index]);
            let r = 0.5874 * libm::exp(0.0883 * t.max(0.0));
            let p_0 = 100.0 * hourly / r;
            months[index] = if p_0 > RAINIEST { (100.0 / RAINIEST * hourly, RAINIEST) } else { (r, p_0) };
        }
        Ok(Self { months })
    }

    /// Share of the average year in which it rains at all, `P_0 annual`.
    ///
    /// ```text
    /// P_0 annual = Σ N P_0 / 365.25
    /// ```
    ///
    /// Source: Recommendation ITU-R P.837-7, Annex 1, step 6.
    #[must_use]
    pub fn rain_time(&self) -> Percent {
        self.mean(|_, p_0| p_0)
    }

    /// Share of the average year in which it rains harder than `R`.
    ///
    /// ```text
    /// P(R) = Σ N P_0 Q( (ln R + 0.7938 - ln r) / 1.26 ) / 365.25,   Q(x) = erfc(x / √2) / 2
    /// ```
    ///
    /// While it rains, the rate is log-normal. At no rain it is [`RainClimate::rain_time`].
    ///
    /// Source: Recommendation ITU-R P.837-7, Annex 1, step 7.
    #[must_use]
    pub fn time_above(&self, rate: MillimetresPerHour) -> Percent {
        self.time_above_log(libm::log(rate.0))
    }

    /// Rain rate exceeded for a share `p` of the average year, `R_p`; `R_0.01` at 0.01 %.
    ///
    /// Solves `P(R) = p` by halving, always in the same steps, until `ln R` is known to 1e-10. Where it rains for no
    /// longer than `p`, the rate is zero. None if `p` is not above 0 %: no rate is never exceeded.
    ///
    /// Source: Recommendation ITU-R P.837-7, Annex 1, step 7; the workbook of the ITU stops at 0.001 % of `p`.
    #[must_use]
    pub fn rate(&self, share: Percent) -> Option<MillimetresPerHour> {
        if share.0.is_nan() || share.0 <= 0.0 {
            return None;
        }
        if share >= self.rain_time() {
            return Some(MillimetresPerHour(0.0));
        }
        // ln R lies between, whatever share a number can hold.
        let (mut low, mut high) = (-60.0, 60.0);
        while high - low > TOLERANCE {
            let middle = f64::midpoint(low, high);
            if self.time_above_log(middle) > share { low = middle } else { high = middle }
        }
        Some(MillimetresPerHour(libm::exp(f64::midpoint(low, high))))
    }

    fn time_above_log(&self, ln_rate: f64) -> Percent {
        self.mean(|r, p_0| {
            // A dry month adds nothing, and its mean rate may be zero.
            if p_0 > 0.0 { p_0 * q((ln_rate + 0.7938 - libm::log(r)) / 1.26) } else { 0.0 }
        })
    }

    /// Mean over the year of a function of `r` and `P_0`.
    fn mean(&self, value: impl Fn(f64, f64) -> f64) -> Percent {
        let sum: f64 = DAYS.iter().zip(&self.months).map(|(n, &(r, p_0))| n * value(r, p_0)).sum();
        Percent(sum / YEAR)
    }
}

/// Probability that a standard normal variable exceeds `x`.
fn q(x: f64) -> f64 {
    libm::erfc(x / std::f64::consts::SQRT_2) / 2.0
}
