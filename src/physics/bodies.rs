//! Antennas on one tube as bodies in space: how much room is between two, and whether one stands in the beam of another.
//!
//! Each is taken as a box in front of the tube, as wide and tall as its dish and as deep as what holds it. An offset to a
//! side is not counted, since on which side is nowhere written.

use crate::units::{Degrees, Metres, Millimetres};

/// Bracket and radio between the tube and the back of a dish: an allowance, common practice, no source.
const BEHIND: f64 = 250.0;
/// Depth of a dish with its cover over its diameter: an allowance, common practice, no source.
const DISH_DEPTH: f64 = 0.25;

/// An antenna on a tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Body {
    /// Its centre, above any level that the others share.
    pub height: Metres,
    /// Its diameter.
    pub diameter: Millimetres,
    /// True bearing of its beam.
    pub bearing: Degrees,
    /// Tilt of its beam, up positive.
    pub tilt: Degrees,
}

/// A point seen from above, in millimetres east and north of the axis of the tube.
type Point = (f64, f64);

impl Body {
    fn half(&self) -> f64 {
        self.diameter.0 / 2.0
    }

    /// Where its front is, along its beam from the axis of the tube.
    fn front(&self, tube: Millimetres) -> f64 {
        tube.0 / 2.0 + BEHIND + DISH_DEPTH * self.diameter.0
    }

    /// The direction of its beam seen from above.
    fn ahead(&self) -> Point {
        let angle = self.bearing.0.to_radians();
        (libm::sin(angle), libm::cos(angle))
    }

    /// Its four corners seen from above.
    fn corners(&self, tube: Millimetres) -> [Point; 4] {
        let ((east, north), half) = (self.ahead(), self.half());
        let (near, far) = (tube.0 / 2.0, self.front(tube));
        [(near, -half), (near, half), (far, -half), (far, half)]
            .map(|(along, across)| (along * east + across * north, along * north - across * east))
    }

    /// Room between two of them on one tube: less than nothing where they overlap, and then by as much.
    ///
    /// ```text
    /// v = |h₁ − h₂| − (D₁ + D₂) / 2,   p the gap of the two boxes seen from above;   √(v² + p²), the greater where both are negative
    /// ```
    ///
    /// Source: separating axes of two rectangles; plane geometry.
    #[must_use]
    pub fn room(&self, other: &Self, tube: Millimetres) -> Millimetres {
        let upright = (self.height - other.height).0.abs() * 1000.0 - self.half() - other.half();
        let (one, two) = (self.corners(tube), other.corners(tube));
        let axes = [self, other].into_iter().flat_map(|body| {
            let (east, north) = body.ahead();
            [(east, north), (north, -east)]
        });
        let apart = |axis: Point| {
            let ([low, high], [from, to]) = (along(&one, axis), along(&two, axis));
            (from - high).max(low - to)
        };
        let flat = axes.map(apart).fold(f64::NEG_INFINITY, f64::max);
        if upright < 0.0 && flat < 0.0 {
            return Millimetres(upright.max(flat));
        }
        Millimetres(libm::hypot(upright.max(0.0), flat.max(0.0)))
    }

    /// Whether another one on the same tube stands in the near cylinder of this one's beam: as wide as the dish, from its front
    /// on.
    ///
    /// Source: near field of an aperture, `D² / (4 λ)`, in which the beam is as wide as the dish (FCC OET Bulletin 65, from
    /// memory); whatever stands on one tube is far nearer than its end.
    #[must_use]
    pub fn shines_on(&self, other: &Self, tube: Millimetres) -> bool {
        let ((east, north), front) = (self.ahead(), self.front(tube));
        let corners = other.corners(tube);
        let [from, to] = along(&corners, (east, north));
        let [left, right] = along(&corners, (north, -east));
        if to <= front || right <= -self.half() || left >= self.half() {
            return false;
        }
        let slope = libm::tan(self.tilt.0.to_radians());
        let at = |ahead: f64| self.height.0 * 1000.0 + slope * (ahead - front);
        let (first, last) = (at(from.max(front)), at(to));
        let (low, high) = (first.min(last) - self.half(), first.max(last) + self.half());
        let (foot, top) = (other.height.0 * 1000.0 - other.half(), other.height.0 * 1000.0 + other.half());
        low < top && foot < high
    }
}

/// How far some points reach along an axis.
fn along(points: &[Point; 4], (east, north): Point) -> [f64; 2] {
    let reach = points.iter().map(|(x, y)| x * east + y * north);
    [reach.clone().fold(f64::INFINITY, f64::min), reach.fold(f64::NEG_INFINITY, f64::max)]
}
