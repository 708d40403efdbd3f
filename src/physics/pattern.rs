//! What an antenna radiates where it is not aimed, when nobody has measured it.
//!
//! Frequency, diameter, gain and an angle off the axis go in, the gain in that direction comes out: as an envelope of
//! the side lobes, for one interferer, or as their mean, for the sum of many. The patterns cover 1 to 86 GHz.

use super::antenna::electrical_diameter;
use crate::units::{Dbi, Decibels, Degrees, Gigahertz, Millimetres};

/// Up to this frequency the skirt of the pattern ends at 48°, above at 120°.
const SPLIT: Gigahertz = Gigahertz(70.0);

/// A dish and its main beam, in the symbols both Recommendations share.
struct Dish {
    /// `D/λ`.
    ratio: f64,
    /// Its decibels, `10 lg(D/λ)`.
    log_ratio: f64,
    g_max: f64,
    /// `G_1 = 2 + 15 lg(D/λ)`: gain of the first side lobe.
    g_1: f64,
    /// `φ_m = 20 (λ/D) √(G_max - G_1)`: where the main beam ends.
    phi_m: f64,
    /// Whether the frequency is above 70 GHz.
    high: bool,
}

/// Why there is no pattern.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum OutOfRange {
    /// Below 1 GHz or above 86 GHz.
    Frequency(Gigahertz),
    /// The diameter is not above zero.
    Diameter(Millimetres),
    /// Off the axis by less than 0° or more than 180°.
    Angle(Degrees),
}

/// Gain at an angle `φ` off the axis, envelope of the side-lobe peaks.
///
/// ```text
/// 0 ≤ φ < φ_m:     G_max - 2.5 · 10⁻³ (φ D/λ)²,   φ_m = 20 (λ/D) √(G_max - G_1),   G_1 = 2 + 15 lg(D/λ)
///
/// D/λ > 100:       G_1                                up to φ_r = 15.85 (D/λ)^-0.6
///                  32 - 25 lg φ                       up to 48°,  then -10;                   up to 70 GHz
///                                                     up to 120°, then -20                    above
/// D/λ ≤ 100:       G_1                                up to 100 λ/D
///                  52 - 10 lg(D/λ) - 25 lg φ          up to 48°,  then 10 - 10 lg(D/λ);       up to 70 GHz
///                                                     up to 120°, then -10 lg(D/λ)            above
/// ```
///
/// Source: Recommendation ITU-R F.699-8, recommends 2.
///
/// # Errors
/// The frequency is outside 1 to 86 GHz, the diameter not above zero, or the angle outside 0° to 180°.
pub fn peak_envelope(
    frequency: Gigahertz,
    diameter: Millimetres,
    gain: Dbi,
    off_axis: Degrees,
) -> Result<Dbi, OutOfRange> {
    let dish = Dish::new(frequency, diameter, gain, off_axis)?;
    let (ledge, skirt, floor) = if dish.ratio > 100.0 {
        (15.85 * libm::pow(dish.ratio, -0.6), 32.0, -10.0)
    } else {
        (100.0 / dish.ratio, 52.0 - dish.log_ratio, 10.0 - dish.log_ratio)
    };
    Ok(dish.gain(off_axis, ledge, skirt, floor))
}

/// Gain at an angle `φ` off the axis, mean over the side lobes.
///
/// ```text
/// 0 ≤ φ < φ_m:     G_max - 2.5 · 10⁻³ (φ D/λ)²
///
/// D/λ > 100:       G_1                                up to max(φ_m, 12.02 (D/λ)^-0.6)
///                  29 - 25 lg φ                       up to 48°,  then -13;                   up to 70 GHz
///                                                     up to 120°, then -23                    above
/// D/λ ≤ 100:       39 - 5 lg(D/λ) - 25 lg φ           up to 48°,  then -3 - 5 lg(D/λ);        up to 70 GHz
///                                                     up to 120°, then -13 - 5 lg(D/λ)        above
/// ```
///
/// with `φ_m` and `G_1` as in [`peak_envelope`].
///
/// Source: Recommendation ITU-R F.1245-3, recommends 2.
///
/// # Errors
/// The frequency is outside 1 to 86 GHz, the diameter not above zero, or the angle outside 0° to 180°.
pub fn average(frequency: Gigahertz, diameter: Millimetres, gain: Dbi, off_axis: Degrees) -> Result<Dbi, OutOfRange> {
    let dish = Dish::new(frequency, diameter, gain, off_axis)?;
    let (ledge, skirt, floor) = if dish.ratio > 100.0 {
        (12.02 * libm::pow(dish.ratio, -0.6), 29.0, -13.0)
    } else {
        (dish.phi_m, 39.0 - dish.log_ratio / 2.0, -3.0 - dish.log_ratio / 2.0)
    };
    Ok(dish.gain(off_axis, ledge, skirt, floor))
}

/// How much less an antenna gains at an angle off the axis than on it, by a measured pattern: straight in decibels and
/// degrees between its points, which are in order, and from nothing on the axis to the first of them. None beyond the last.
///
/// Source: straight line between measured values.
#[must_use]
pub fn measured(points: &[(Degrees, Decibels)], off_axis: Degrees) -> Option<Decibels> {
    let next = points.iter().position(|(angle, _)| *angle >= off_axis)?;
    let (to, below) = points[next];
    let (from, above) = if next == 0 { (Degrees(0.0), Decibels(0.0)) } else { points[next - 1] };
    let share = if to > from { (off_axis - from).0 / (to - from).0 } else { 1.0 };
    Some(Decibels(above.0 + (below.0 - above.0) * share))
}

impl Dish {
    fn new(frequency: Gigahertz, diameter: Millimetres, gain: Dbi, off_axis: Degrees) -> Result<Self, OutOfRange> {
        if !(1.0..=86.0).contains(&frequency.0) {
            return Err(OutOfRange::Frequency(frequency));
        }
        if diameter.0.is_nan() || diameter.0 <= 0.0 {
            return Err(OutOfRange::Diameter(diameter));
        }
        if !(0.0..=180.0).contains(&off_axis.0) {
            return Err(OutOfRange::Angle(off_axis));
        }
        let ratio = electrical_diameter(frequency, diameter);
        let log_ratio = 10.0 * libm::log10(ratio);
        let g_1 = 2.0 + 1.5 * log_ratio;
        // A gain below the side lobe's has no main beam.
        let phi_m = 20.0 / ratio * (gain.0 - g_1).max(0.0).sqrt();
        Ok(Self { ratio, log_ratio, g_max: gain.0, g_1, phi_m, high: frequency > SPLIT })
    }

    /// The main beam; then `G_1` up to the end of the ledge; then a skirt that falls by 25 dB a decade from its value
    /// at 1°; then the floor. `floor` is that up to 70 GHz: above, it lies 10 dB lower and begins later.
    fn gain(&self, off_axis: Degrees, ledge: f64, skirt: f64, floor: f64) -> Dbi {
        let phi = off_axis.0;
        let (floor_at, floor) = if self.high { (120.0, floor - 10.0) } else { (48.0, floor) };
        Dbi(if phi < self.phi_m {
            self.g_max - 2.5e-3 * (phi * self.ratio) * (phi * self.ratio)
        } else if phi < ledge {
            self.g_1
        } else if phi < floor_at {
            skirt - 25.0 * libm::log10(phi)
        } else {
            floor
        })
    }
}
