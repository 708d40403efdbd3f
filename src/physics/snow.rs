//! Whether what falls through a hop is rain, melting snow or dry snow.
//!
//! Antenna heights and the rain height of the place go in. Melting flakes are big and wet and cost several times the
//! rain they become; dry ones cost next to nothing. The share of the year each of them falls is not computed: that
//! takes a distribution of rain heights that the caller would have to bring.

use crate::units::Metres;

/// How far the rain height lies above the isotherm of 0 °C.
///
/// Source: Recommendation ITU-R P.839-4, recommends 2 (clause from memory, not seen).
const ABOVE_ISOTHERM: Metres = Metres(360.0);

/// A hop all of which is this far below the mean rain height, or further, is never in melting snow.
const ALWAYS_RAIN: Metres = Metres(3600.0);

/// A hop all of which is further above the mean rain height than this is always in dry snow.
const ALWAYS_SNOW: Metres = Metres(2400.0);

/// How far below the rain height snow has melted.
///
/// Source: Recommendation ITU-R P.530-18, section 2.4.2.
const MELTING_LAYER: Metres = Metres(1200.0);

/// What may fall through a hop over the years.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Precipitation {
    /// Rain alone: [`super::rain_outage`] tells the whole loss.
    Rain,
    /// At times melting snow, which costs more than rain: the rain outage is too hopeful.
    MeltingSnow,
    /// Dry snow alone, which costs nothing: the rain outage is too gloomy.
    DrySnow,
}

/// Mean rain height above sea level, `h_R`, from the mean height `h_0` of the 0 °C isotherm.
///
/// ```text
/// h_R = h_0 + 0.36 km
/// ```
///
/// Source: Recommendation ITU-R P.839-4, recommends 2 (clause from memory, not seen).
#[must_use]
pub fn rain_height(isotherm: Metres) -> Metres {
    isotherm + ABOVE_ISOTHERM
}

/// What falls through a hop between two antennas, all heights above mean sea level, in either order.
///
/// ```text
/// rain          h_hi ≤ h_R - 3600 m
/// dry snow      h_lo > h_R + 2400 m
/// melting snow  at times, anywhere between
/// ```
///
/// The band is wide because the rain height of a day may lie kilometres from its mean.
///
/// Source: Recommendation ITU-R P.530-18, section 2.4.2.
#[must_use]
pub fn precipitation(antennas: [Metres; 2], rain_height: Metres) -> Precipitation {
    let [a, b] = antennas;
    let (low, high) = if a < b { (a, b) } else { (b, a) };
    if high <= rain_height - ALWAYS_RAIN {
        Precipitation::Rain
    } else if low > rain_height + ALWAYS_SNOW {
        Precipitation::DrySnow
    } else {
        Precipitation::MeltingSnow
    }
}

/// Whether any part of a path lies where snow melts when the rain height is at its mean.
///
/// ```text
/// h_lo ≤ h_R   and   h_hi ≥ h_R - 1200 m
/// ```
///
/// The layer of [`multiplier`]. Much narrower than [`Precipitation::MeltingSnow`], which asks whether it ever happens.
///
/// Source: Recommendation ITU-R P.530-18, section 2.4.2.
#[must_use]
pub fn in_melting_layer(antennas: [Metres; 2], rain_height: Metres) -> bool {
    let [a, b] = antennas;
    let (low, high) = if a < b { (a, b) } else { (b, a) };
    low <= rain_height && high >= rain_height - MELTING_LAYER
}

/// Loss in what falls at a height `Δh` above the rain height of the moment, over the loss in the rain it becomes, `Γ`.
///
/// ```text
/// Γ = 0                                                   Δh > 0, dry snow
///     4 E² / ( 1 + B² (4 E² - 1) )                        -1200 m ≤ Δh ≤ 0
///     1                                                   Δh < -1200 m, rain
/// E = 1 - exp(Δh / 70),   B = 1 - exp( -(Δh / 600)² )
/// ```
///
/// The worst is 3.5, some 240 m below the rain height.
///
/// Source: Recommendation ITU-R P.530-18, section 2.4.2.
#[must_use]
pub fn multiplier(above: Metres) -> f64 {
    let dh = above.0;
    if dh > 0.0 {
        return 0.0;
    }
    if dh < -1200.0 {
        return 1.0;
    }
    let e = 1.0 - libm::exp(dh / 70.0);
    let b = 1.0 - libm::exp(-(dh / 600.0) * (dh / 600.0));
    4.0 * e * e / (1.0 + b * b * (4.0 * e * e - 1.0))
}
