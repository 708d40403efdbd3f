//! What two dishes lose that stand too close together for their gains to count in full.
//!
//! The gain of a dish is that of plane waves. Within some multiples of `2 D²/λ` the wave from one dish is still bent where it
//! meets the other, the edges of the apertures hear each other late, and less arrives than free space says. Roof to roof at
//! 80 GHz that is decibels. The pattern and the beam of a data sheet do not hold there either.

use std::f64::consts::PI;

use super::free_space::wavelength;
use crate::units::{Decibels, Gigahertz, Metres, Millimetres};

/// Field at the edge of an aperture, of that in its middle: 10 dB less, as feeds commonly light a dish.
///
/// Common practice, no source.
pub const EDGE_FIELD: f64 = 0.316_227_766_016_837_94;

/// Less than this is none, dB.
const NOTHING: f64 = 1e-3;
/// Up to here the loss follows its small form to a few parts in a thousand, so that it decides whether there is any, dB.
const SMALL: f64 = 0.5 * NOTHING;
/// Closer than this, in the phase that the edge lags behind the middle, the model of waves does not hold.
const MOST_LAG: f64 = 40.0;

/// A round aperture as another one sees it: how it is lit, and how far its edge lags behind its middle.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Lit {
    /// Field at the edge of that in the middle.
    edge: f64,
    /// `β = π D² / (4 λ R)`, radians.
    lag: f64,
}

impl Lit {
    /// Field at `t`, the square of the radius in radii of the aperture.
    fn field(&self, t: f64) -> f64 {
        self.edge + (1.0 - self.edge) * (1.0 - t)
    }

    /// Sum of the field over the aperture, and mean and variance of `t` weighted with it.
    fn moments(&self) -> (f64, f64, f64) {
        let (edge, more) = (self.edge, 1.0 - self.edge);
        let sum = edge + more / 2.0;
        let mean = (edge / 2.0 + more / 6.0) / sum;
        let square = (edge / 3.0 + more / 12.0) / sum;
        (sum, mean, square - mean * mean)
    }
}

/// Two apertures face to face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pair {
    ends: [Lit; 2],
}

impl Pair {
    /// Two dishes at a distance, lit to `edge` at their rims: [`EDGE_FIELD`] where nothing else is known.
    #[must_use]
    pub fn new(frequency: Gigahertz, diameters: [Millimetres; 2], distance: Metres, edge: f64) -> Self {
        let lag = |diameter: Millimetres| {
            let diameter = diameter.0 / 1000.0;
            PI * diameter * diameter / (4.0 * wavelength(frequency).0 * distance.0)
        };
        Self { ends: diameters.map(|diameter| Lit { edge, lag: lag(diameter) }) }
    }

    /// Loss against free space, where it is small.
    ///
    /// ```text
    /// L = 4.3429 [ β₁² v₁ + β₂² v₂ + 2 β₁ β₂ m₁ m₂ ]   dB
    /// ```
    ///
    /// with mean `m` and variance `v` of `t` weighted with the field. Within 3 % from half of `2 D²/λ` on.
    ///
    /// Source: second order of [`Self::loss`].
    #[must_use]
    pub fn small_loss(&self) -> Decibels {
        let [(one, (_, mean_1, spread_1)), (two, (_, mean_2, spread_2))] =
            self.ends.map(|end| (end.lag, end.moments()));
        let decibels = 10.0 / std::f64::consts::LN_10;
        let cross = 2.0 * one * two * mean_1 * mean_2;
        Decibels(decibels * (one * one * spread_1 + two * two * spread_2 + cross))
    }

    /// Loss against free space on the axis of both, none below a thousandth of a decibel. `None` where they are too close to
    /// tell: with a single dish at each end, within some diameters.
    ///
    /// ```text
    /// L = -20 lg | ∫∫ g₁ g₂ exp(-j(β₁ t₁ + β₂ t₂)) J₀(2 √(β₁ β₂ t₁ t₂)) dt₁ dt₂ / (∫ g₁ ∫ g₂) |
    /// g(t) = b + (1 - b)(1 - t),   β = π D² / (4 λ R)
    /// ```
    ///
    /// Both focused at infinity, face to face.
    ///
    /// Source: scalar Fresnel diffraction between two round apertures; tapered apertures on the axis are treated by Rabello and
    /// Nobili, Radio Science 8(7), 1973 (abstract seen).
    #[must_use]
    pub fn loss(&self) -> Option<Decibels> {
        if self.small_loss().0 < SMALL {
            return Some(Decibels(0.0));
        }
        let [one, two] = self.ends;
        let lag = one.lag.max(two.lag);
        if lag.is_nan() || lag > MOST_LAG {
            return None;
        }
        let points = Points::for_lag(lag);
        let weighted = |end: Lit| points.map(move |(t, weight)| (t, weight * end.field(t), end.lag * t));
        let far: Vec<(f64, f64, f64)> = weighted(two).collect();
        let reach = 2.0 * libm::sqrt(one.lag * two.lag);
        let (mut real, mut imaginary) = (0.0, 0.0);
        for (t_1, share_1, late_1) in weighted(one) {
            for (t_2, share_2, late_2) in &far {
                let share = share_1 * share_2 * libm::j0(reach * libm::sqrt(t_1 * t_2));
                real += share * libm::cos(late_1 + late_2);
                imaginary -= share * libm::sin(late_1 + late_2);
            }
        }
        let whole = one.moments().0 * two.moments().0;
        let loss = -20.0 * libm::log10(libm::hypot(real, imaginary) / whole);
        Some(Decibels(if loss < NOTHING { 0.0 } else { loss }))
    }
}

/// Points and weights of Gauss and Legendre over 0 to 1.
#[derive(Debug, Clone)]
struct Points {
    list: Vec<(f64, f64)>,
}

impl Points {
    /// As many as a lag asks for: what is summed turns by it once over the aperture, and again in the Bessel function.
    fn for_lag(lag: f64) -> Self {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a lag of some tens at most")]
        let count = 12 + lag.ceil() as u32;
        let list = (0..count).map(|index| point(index, count)).collect();
        Self { list }
    }

    fn map<'p, T: 'p>(&'p self, make: impl Fn((f64, f64)) -> T + 'p) -> impl Iterator<Item = T> + 'p {
        self.list.iter().copied().map(make)
    }
}

/// A root of the Legendre polynomial of a degree, found by Newton's method, and its weight; both for 0 to 1.
fn point(index: u32, degree: u32) -> (f64, f64) {
    let n = f64::from(degree);
    let mut x = libm::cos(PI * (f64::from(index) + 0.75) / (n + 0.5));
    let mut slope = 1.0;
    for _ in 0..8 {
        let (mut before, mut here) = (1.0, x);
        for k in 2..=degree {
            let k = f64::from(k);
            (before, here) = (here, ((2.0 * k - 1.0) * x * here - (k - 1.0) * before) / k);
        }
        slope = n * (x * here - before) / (x * x - 1.0);
        x -= here / slope;
    }
    (f64::midpoint(1.0, x), 1.0 / ((1.0 - x * x) * slope * slope))
}
