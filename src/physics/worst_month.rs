//! From the average year to its worst month, and back.
//!
//! A share of the average year goes in; out comes the share of that calendar month, another one each year, in which the
//! same fade is exceeded for longest. Error objectives are set for the worst month, availability for the year.

use super::rain_outage::Outage;
use crate::units::Percent;

/// `Q` at one percent of the year, `Q_1`, and how it falls with the share, `β`: the global values for planning.
///
/// Source: Recommendation ITU-R P.841-6, recommends 3 (edition and clause from memory, not seen).
const Q_1: f64 = 2.85;
const BETA: f64 = 0.13;

/// A month is a twelfth of a year, so it cannot hold more than twelve times the share.
const MOST: f64 = 12.0;

/// Share of the worst month, `p_w`, for a share `p` of the average year.
///
/// ```text
/// p_w = Q p
/// Q   = 12                                             p < (Q_1 / 12)^(1/β), that is 0.000 015 8 %
///       Q_1 p^-β                                       from there to 3 %
///       Q_1 3^-β                                       3 % to 30 %
///       Q_1 3^-β (p/30)^( lg(Q_1 3^-β) / lg 0.3 )      above 30 %
/// ```
///
/// The parts meet, `p_w` grows with `p`, and the whole year is the whole month. None for less than 0 % or more than
/// 100 %, which is no share of time.
///
/// Source: Recommendation ITU-R P.841-6, recommends 2 and 3, global planning values (edition and clause from memory,
/// not seen).
#[must_use]
pub fn worst_month(annual: Percent) -> Option<Percent> {
    let p = annual.0;
    let q_3 = flat();
    let p_w = if p < rarest() {
        MOST * p
    } else if p < 3.0 {
        Q_1 * libm::pow(p, 1.0 - BETA)
    } else if p <= 30.0 {
        q_3 * p
    } else {
        q_3 * p * libm::pow(p / 30.0, bend())
    };
    share(p, p_w)
}

/// Share of the average year, `p`, for a share `p_w` of the worst month: the inverse of [`worst_month`].
///
/// ```text
/// p = (p_w / Q_1)^(1/(1 - β)) ≈ 0.30 p_w^1.15          in the part up to 3 % of the year
/// ```
///
/// None for less than 0 % or more than 100 %.
///
/// Source: [`worst_month`], each part solved for `p`.
#[must_use]
pub fn annual(worst_month: Percent) -> Option<Percent> {
    let p_w = worst_month.0;
    let q_3 = flat();
    let p = if p_w < MOST * rarest() {
        p_w / MOST
    } else if p_w < 3.0 * q_3 {
        libm::pow(p_w / Q_1, 1.0 / (1.0 - BETA))
    } else if p_w <= 30.0 * q_3 {
        p_w / q_3
    } else {
        30.0 * libm::pow(p_w / (30.0 * q_3), 1.0 / (1.0 + bend()))
    };
    share(p_w, p)
}

/// `Q_1 3^-β`, the ratio from 3 % to 30 %.
fn flat() -> f64 {
    Q_1 * libm::pow(3.0, -BETA)
}

/// Share of the year below which the ratio is 12.
fn rarest() -> f64 {
    libm::pow(Q_1 / MOST, 1.0 / BETA)
}

/// Exponent above 30 %, which brings the ratio to one at 100 %.
fn bend() -> f64 {
    libm::log10(flat()) / libm::log10(0.3)
}

/// The result for a share of time; rounding must not lift it over the whole.
fn share(given: f64, result: f64) -> Option<Percent> {
    (0.0..=100.0).contains(&given).then(|| Percent(result.min(100.0)))
}

/// Share of the worst month in which rain takes more than the margin, with the side told where the year's share is only
/// known to lie beyond the rain model.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MonthOutage {
    /// Never in the year, so never in a month.
    Never,
    /// Not more than this.
    AtMost(Percent),
    /// This share.
    Within(Percent),
    /// At least this.
    AtLeast(Percent),
}

impl MonthOutage {
    /// Of the worst month, what [`worst_month`] makes of an outage of the average year.
    #[must_use]
    pub fn of(annual: Outage) -> Self {
        let [least, most] = [annual.at_least(), annual.at_most()].map(|share| worst_month(share).unwrap_or(share));
        match annual {
            Outage::Never => Self::Never,
            Outage::Below => Self::AtMost(most),
            Outage::Within(_) => Self::Within(most),
            Outage::Above => Self::AtLeast(least),
        }
    }

    /// The least it can be.
    #[must_use]
    pub fn at_least(self) -> Percent {
        match self {
            Self::Never | Self::AtMost(_) => Percent(0.0),
            Self::AtLeast(share) | Self::Within(share) => share,
        }
    }

    /// The most it can be.
    #[must_use]
    pub fn at_most(self) -> Percent {
        match self {
            Self::Never => Percent(0.0),
            Self::AtMost(share) | Self::Within(share) => share,
            Self::AtLeast(_) => Percent(100.0),
        }
    }
}
