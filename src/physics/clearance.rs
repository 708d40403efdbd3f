//! How far ground, trees and roofs stay out of a ray.
//!
//! A [`Sightline`] is the straight line between two antennas over an Earth swollen by `k`; a [`Point`] is what rises
//! towards it. Out come the clearance at each point, the Fresnel radius it is measured by, and how much higher an
//! antenna must go. Planning asks for a clearance of 0.6 to 1 radius; below 0.6 the obstacle costs something, and what,
//! [`super::knife_edge`] and [`super::bullington`] say.

use super::free_space::wavelength;
use super::geodesy::EARTH_RADIUS;
use crate::units::{Gigahertz, Metres};

/// Radius of the first Fresnel zone, `F_1`, at `d_1` and `d_2` from the ends.
///
/// ```text
/// F_1 = √( λ d_1 d_2 / (d_1 + d_2) )
/// ```
///
/// Holds many wavelengths away from the ends. Zero at an end; between ends that coincide it is not a number.
///
/// Source: Recommendation ITU-R P.526-15, section 2, Fresnel ellipsoids, for `n = 1`.
#[must_use]
pub fn first_fresnel_radius(frequency: Gigahertz, near: Metres, far: Metres) -> Metres {
    let (lambda, d_1, d_2) = (wavelength(frequency).0, near.0, far.0);
    Metres((lambda * d_1 * d_2 / (d_1 + d_2)).sqrt())
}

/// How far the Earth bulges into the line between two points of its surface, at `d_1` and `d_2` from them.
///
/// ```text
/// h = d_1 d_2 / (2 k R)
/// ```
///
/// The parabola for the circle: right to a millimetre over any hop. `k` is positive;
/// [`super::geodesy::MEDIAN_K`] for the median, less where rays bend the other way.
///
/// Source: plane geometry; effective radius `k R` after Recommendation ITU-R P.310-10.
#[must_use]
pub fn earth_bulge(near: Metres, far: Metres, k: f64) -> Metres {
    Metres(near.0 * far.0 / (2.0 * k * EARTH_RADIUS.0))
}

/// How far an antenna sees over a smooth Earth.
///
/// ```text
/// d = √( 2 k R h )
/// ```
///
/// Two antennas see each other up to the sum of theirs. `h` is above the smooth surface, zero or more; right to a metre in a
/// kilometre up to 10 km of height.
///
/// Source: plane geometry, as [`earth_bulge`]; the tangent from a height to a circle of `k R`.
#[must_use]
pub fn horizon(height: Metres, k: f64) -> Metres {
    Metres((2.0 * k * EARTH_RADIUS.0 * height.0.max(0.0)).sqrt())
}

/// The straight line from antenna to antenna.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sightline {
    /// Height of the near antenna above mean sea level, `h_1`.
    pub near: Metres,
    /// Height of the far antenna above mean sea level, `h_2`.
    pub far: Metres,
    /// Distance between them along the ground, `d`.
    pub length: Metres,
    /// Effective Earth radius factor, above zero.
    pub k: f64,
}

/// A point of the profile under the line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// Distance from the near end, `d_1`.
    pub distance: Metres,
    /// Top of what stands there, above mean sea level: ground and what grows or is built on it.
    pub top: Metres,
}

/// Which antenna goes up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Raise {
    /// The near one alone.
    Near,
    /// The far one alone.
    Far,
    /// Both, by the same height.
    Both,
}

impl Sightline {
    /// Distance of a point from the far end, `d_2`.
    #[must_use]
    pub fn beyond(&self, point: Point) -> Metres {
        self.length - point.distance
    }

    /// Whether a point lies between the ends. The ends themselves do not count: an antenna does not block itself.
    #[must_use]
    pub fn spans(&self, point: Point) -> bool {
        point.distance > Metres(0.0) && point.distance < self.length
    }

    /// Height of the line over a point, less the bulge of the Earth there: above sea level as a flat profile has it.
    ///
    /// ```text
    /// h = h_1 + (h_2 - h_1) d_1 / d - d_1 d_2 / (2 k R)
    /// ```
    ///
    /// Source: plane geometry.
    #[must_use]
    pub fn height(&self, point: Point) -> Metres {
        let rise = Metres((self.far - self.near).0 * point.distance.0 / self.length.0);
        self.near + rise - earth_bulge(point.distance, self.beyond(point), self.k)
    }

    /// How far the line passes above a point, `c`; negative if the point stands in the way.
    ///
    /// Source: definition.
    #[must_use]
    pub fn clearance(&self, point: Point) -> Metres {
        self.height(point) - point.top
    }

    /// Radius of the first Fresnel zone at a point, see [`first_fresnel_radius`].
    #[must_use]
    pub fn radius(&self, frequency: Gigahertz, point: Point) -> Metres {
        first_fresnel_radius(frequency, point.distance, self.beyond(point))
    }

    /// The least by which antennas must rise so that every point is cleared by a fraction `φ` of `F_1`.
    ///
    /// ```text
    /// s = φ F_1 - c        what a point lacks
    /// Δ = s d / d_2        raising the near antenna lifts the line by d_2/d of it
    ///     s d / d_1        raising the far one
    ///     s                raising both
    /// ```
    ///
    /// and of all points the most. Exact: the line turns about the antenna that stays. Zero if nothing is lacking, and
    /// points that are not between the ends are passed over.
    ///
    /// Source: similar triangles.
    #[must_use]
    pub fn least_raise(&self, frequency: Gigahertz, fraction: f64, points: &[Point], raise: Raise) -> Metres {
        let lacking = |point: &Point| {
            let s = fraction * self.radius(frequency, *point).0 - self.clearance(*point).0;
            s * match raise {
                Raise::Near => self.length.0 / self.beyond(*point).0,
                Raise::Far => self.length.0 / point.distance.0,
                Raise::Both => 1.0,
            }
        };
        Metres(points.iter().filter(|point| self.spans(**point)).map(lacking).fold(0.0, f64::max))
    }
}
