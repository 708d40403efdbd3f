//! How much of the Fresnel zone a path is planned to keep free, and at which bending of the rays.
//!
//! Rays mostly bend towards the Earth, as if its radius were 4/3 of the true one; for short times they bend less or the other
//! way, and the Earth stands higher into the line. A path is therefore looked at twice: at the median, and at the least
//! effective radius that a month brings for a length of path worth speaking of. Over a long path the air is never so bad
//! everywhere at once, so that the second is the milder the longer the path.

use crate::units::Metres;

/// The shortest path the figure of the Recommendation is taken for.
const SHORTEST: Metres = Metres(20_000.0);
/// Over this length more is asked for in the tropics.
const LONG_IN_THE_TROPICS: Metres = Metres(30_000.0);

/// A climate, as far as clearance goes by it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Climate {
    /// Temperate.
    Temperate,
    /// Tropical.
    Tropical,
}

/// How what stands nearest to the line meets it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Obstacle {
    /// One sharp thing alone.
    Isolated,
    /// Ground, a wood or roofs over some part of the path.
    Extended,
}

/// Shares of the radius of the first Fresnel zone to keep free.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shares {
    /// At the median `k` of 4/3.
    pub median: f64,
    /// At the `k` exceeded for 99.9 % of the worst month.
    pub low: f64,
}

/// The effective Earth radius factor exceeded for 99.9 % of the worst month on a path of a length, in a continental
/// temperate climate.
///
/// ```text
/// k_e = 157 / (144 + 2670 / d)        d in km, at least 20
/// ```
///
/// Shorter paths have the value of 20 km, 0.566: that choice is ours. It rises from there to 0.92 at 100 km.
///
/// Source: closed form of the older literature for the figure of Recommendation ITU-R P.530 section 2.2.2 (CCIR Report 338), from
/// memory; the figure itself was not seen.
#[must_use]
pub fn low_k(length: Metres) -> f64 {
    let kilometres = if length < SHORTEST { SHORTEST } else { length }.0 / 1000.0;
    157.0 / (144.0 + 2670.0 / kilometres)
}

/// The shares asked for of a path with one antenna at each end.
///
/// | climate | median `k` | low `k` |
/// |---|---|---|
/// | temperate | 1.0 | 0.3, over an isolated obstacle 0 |
/// | tropical, over 30 km | 1.0 | 0.6 |
/// | tropical, up to 30 km | 1.0 | as temperate |
///
/// Source: Recommendation ITU-R P.530-18 section 2.2.2.1, from memory; tropical paths up to 30 km are our reading.
#[must_use]
pub fn shares(climate: Climate, obstacle: Obstacle, length: Metres) -> Shares {
    let low = match (climate, obstacle) {
        (Climate::Tropical, _) if length > LONG_IN_THE_TROPICS => 0.6,
        (_, Obstacle::Extended) => 0.3,
        (_, Obstacle::Isolated) => 0.0,
    };
    Shares { median: 1.0, low }
}
