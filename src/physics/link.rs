//! The small sums of a link.
//!
//! Levels, gains and losses go in, what is left comes out. All exact, all in one line.

use super::rain_outage::Outage;
use crate::units::{Dbi, Dbm, Decibels, Minutes, Percent};

/// A year of 365 days.
pub const YEAR: Minutes = Minutes(525_600.0);

/// Level at the receiver in clear air, `P_r`.
///
/// ```text
/// P_r = P_t + G_1 + G_2 - Σ L
/// ```
///
/// The losses are free space, gas, feeders and whatever else the path costs; their order does not matter.
///
/// Source: definition of decibels; Recommendation ITU-R P.341-7, transmission loss.
#[must_use]
pub fn received_level(transmitted: Dbm, gains: [Dbi; 2], losses: &[Decibels]) -> Dbm {
    let [near, far] = gains;
    losses.iter().fold(transmitted + near + far, |level, loss| level - *loss)
}

/// What a fade may take before the receiver fails, `M`; negative if it fails in clear air.
///
/// ```text
/// M = P_r - P_threshold
/// ```
///
/// Source: definition.
#[must_use]
pub fn fade_margin(received: Dbm, threshold: Dbm) -> Decibels {
    received - threshold
}

/// Minutes in a [`YEAR`] for a share of it. The average year of 365.25 days would have 0.07 % more.
#[must_use]
pub fn minutes_per_year(share: Percent) -> Minutes {
    Minutes(YEAR.0 * share.0 / 100.0)
}

/// Share of time in which the link works.
///
/// ```text
/// availability = 100 % - outage
/// ```
///
/// Source: definition.
#[must_use]
pub fn availability(outage: Percent) -> Percent {
    Percent(100.0) - outage
}

/// Rain outage of both directions together: the larger one.
///
/// The same rain fades both, so they fail in the same minutes and their outages do not add.
///
/// Source: one path, one rain.
#[must_use]
pub fn two_way(one: Outage, other: Outage) -> Outage {
    if other > one { other } else { one }
}
