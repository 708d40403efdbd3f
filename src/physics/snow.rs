//! Whether what falls through a hop is rain, melting snow or dry snow.
//!
//! Antenna heights and the rain height of the place go in. Melting flakes are big and wet and cost several times the
//! rain they become; dry ones cost next to nothing. The rain height of a day lies kilometres from its mean, so what a hop
//! meets over the years is weighted by how often each rain height is there: [`factor`].

use crate::units::Metres;

/// How far the rain height lies above the isotherm of 0 °C.
///
/// Source: Recommendation ITU-R P.839-4, recommends 2 (clause from memory, not seen).
const ABOVE_ISOTHERM: Metres = Metres(360.0);

/// A hop all of which is this far below the mean rain height, or further, is never in melting snow.
const ALWAYS_RAIN: Metres = Metres(3600.0);

/// A hop all of which is further above the mean rain height than this is always in dry snow.
const ALWAYS_SNOW: Metres = Metres(2400.0);

/// Step of the table of rain heights.
const STEP: Metres = Metres(100.0);

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

/// How often the rain height of the moment lies in each step of 100 m, from 2400 m below its mean up to 2400 m above.
/// The middle stands last: the other half is the same, mirrored.
///
/// Source: Recommendation ITU-R P.530-18, section 2.4.2, table of rain height probabilities (Recommendation
/// ITU-R P.2001-4, table C.2.1, second-hand).
const PROBABILITIES: [f64; 25] = [
    0.000_555, 0.000_802, 0.001_139, 0.001_594, 0.002_196, 0.002_978, 0.003_976, 0.005_227, 0.006_764, 0.008_617,
    0.010_808, 0.013_346, 0.016_225, 0.019_419, 0.022_881, 0.026_542, 0.030_312, 0.034_081, 0.037_724, 0.041_110,
    0.044_104, 0.046_583, 0.048_439, 0.049_589, 0.049_978,
];

/// Height of the middle of a hop, `h_link`, over the sea: the Earth bulges into the straight line.
///
/// ```text
/// h_link = (h_1 + h_2) / 2 - d² / 17        metres, d in kilometres
/// ```
///
/// Source: Recommendation ITU-R P.530-18, section 2.4.2.
#[must_use]
pub fn middle(antennas: [Metres; 2], distance: Metres) -> Metres {
    let [one, other] = antennas;
    let d = distance.0 / 1000.0;
    Metres(f64::midpoint(one.0, other.0) - d * d / 17.0)
}

/// What wet snow makes of the rain fade of a hop at every percentage of the year, `F`: `A_rs = F A_p`.
///
/// ```text
/// F = Σ P_i Γ( h_link - h_i ),   h_i = h_R - 2400 m + 100 m · i,   i = 0 … 48
/// F = 1                                                             h_link ≤ h_R - 3600 m
/// ```
///
/// `h_link` is that of [`middle`], `h_R` the mean rain height, `Γ` the [`multiplier`]. At most 1.31, some 770 m below the
/// mean rain height; nothing is left far above it, where all snow is dry. Snow that sticks to antennas is not in it.
///
/// Source: Recommendation ITU-R P.530-18, section 2.4.2.
#[must_use]
pub fn factor(middle: Metres, rain_height: Metres) -> f64 {
    let above_mean = middle - rain_height;
    if above_mean <= Metres(-ALWAYS_RAIN.0) {
        return 1.0;
    }
    let mirrored = PROBABILITIES.iter().chain(PROBABILITIES.iter().rev().skip(1));
    let lowest = Metres(-ALWAYS_SNOW.0);
    let step = |number: i32| Metres(STEP.0 * f64::from(number));
    (0..).zip(mirrored).map(|(number, share)| share * multiplier(above_mean - lowest - step(number))).sum()
}
