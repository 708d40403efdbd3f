//! Hops in a row, and two rows side by side: how long a service is down, and how late it arrives.
//!
//! Outages go in as shares of the average year. What is not known of how they fall together is taken at its worst: in a row
//! they are added up, and over two rows near rain is one rain.

use super::geodesy::{self, Position};
use crate::units::{Metres, Milliseconds, Percent};

/// Speed of light in vacuum, metres in a second. Exact by definition of the metre.
const LIGHT: f64 = 299_792_458.0;

/// Refractive index of air at sea level, the mean of the globe. Up to 1.0004 in wet heat, which is 0.01 % more delay.
const AIR: f64 = 1.000_315;

/// All of the time.
const WHOLE: Percent = Percent(100.0);

/// What takes a row of hops down.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Outage by rain of each hop.
    pub rain: Vec<Percent>,
    /// Outage by everything else, of all hops together.
    pub other: Percent,
}

impl Row {
    /// Outage of the row, whatever falls together.
    ///
    /// ```text
    /// P(∪ A_i) ≤ Σ P(A_i),   at most 100 %
    /// ```
    ///
    /// Source: Boole's inequality; an upper bound for every correlation there can be.
    #[must_use]
    pub fn outage(&self) -> Percent {
        added(self.rain.iter().copied().chain([self.other]))
    }
}

/// Shares of time added up.
///
/// Source: Boole's inequality, see [`Row::outage`].
#[must_use]
pub fn added(shares: impl IntoIterator<Item = Percent>) -> Percent {
    let sum = shares.into_iter().fold(Percent(0.0), |sum, share| sum + share);
    if sum < WHOLE { sum } else { WHOLE }
}

/// Outage by rain of hops in a row where rain on hops near each other is one rain: the least it can be then.
///
/// ```text
/// Σ over clusters of  max r_i
/// ```
///
/// A cluster is as long a run of hops as possible, from the first on, all of which are near each other. Within it rain counts
/// once, at the worst hop; clusters are added up. That is not what a promise may be held against, see [`Row::outage`].
///
/// Source: one cause, counted once.
#[must_use]
pub fn rain_counted_once(rain: &[Percent], near: impl Fn(usize, usize) -> bool) -> Percent {
    let (mut first, mut worst, mut sum) = (0, Percent(0.0), Percent(0.0));
    for (own, share) in rain.iter().enumerate() {
        if !(first..own).all(|other| near(other, own)) {
            sum = sum + worst;
            (first, worst) = (own, Percent(0.0));
        }
        if *share > worst {
            worst = *share;
        }
    }
    added([sum, worst])
}

/// Time in which it rains too hard on both rows at once.
///
/// ```text
/// P(∪ R_i ∩ ∪ R_j) ≤ Σ_ij P(R_i ∩ R_j)      min(r_i, r_j) where rain is common, else r_i r_j
/// ```
///
/// and never more than either row has. `min` is the most that two events can have in common, so rain that is called common is
/// taken to be so wholly; rain that is not is taken as independent.
///
/// Source: Boole's inequality and the bound of Fréchet; independence beyond the distance is the caller's assumption.
#[must_use]
pub fn rain_at_once(one: &[Percent], other: &[Percent], common: impl Fn(usize, usize) -> bool) -> Percent {
    let pairs = one.iter().enumerate().flat_map(|(i, r)| other.iter().enumerate().map(move |(j, s)| (i, *r, j, *s)));
    let at_once = pairs.map(|(i, r, j, s)| if common(i, j) { lesser(r, s) } else { product(r, s) });
    let either = lesser(added(one.iter().copied()), added(other.iter().copied()));
    lesser(added(at_once), either)
}

/// Outage of two rows side by side, of which one is enough.
///
/// ```text
/// p = R + r_1 o_2 + o_1 r_2 + o_1 o_2      R: rain on both at once, see rain_at_once
/// ```
///
/// Rain `r` of one row with everything else `o` of the other, and everything else with itself, are taken as independent of each
/// other. Never more than either row has.
///
/// Source: Boole's inequality over the four ways in which both can be down; independence of what is no rain.
#[must_use]
pub fn both_down(one: &Row, other: &Row, common: impl Fn(usize, usize) -> bool) -> Percent {
    let [r_1, r_2] = [one, other].map(|row| added(row.rain.iter().copied()));
    let (o_1, o_2) = (one.other, other.other);
    let rain = rain_at_once(&one.rain, &other.rain, common);
    let all = added([rain, product(r_1, o_2), product(o_1, r_2), product(o_1, o_2)]);
    lesser(all, lesser(one.outage(), other.outage()))
}

/// How late a signal arrives over a length of air.
///
/// ```text
/// t = n s / c,   n = 1.000315
/// ```
///
/// Source: definition; the mean refractivity at sea level, 315, is that of Recommendation ITU-R P.453-14, from memory. Higher up
/// it is less, and so is the delay.
#[must_use]
pub fn propagation(length: Metres) -> Milliseconds {
    Milliseconds(1000.0 * AIR * length.0 / LIGHT)
}

/// Least distance between two paths over the ground; nothing where they cross or touch.
///
/// The second path and the far end of the first are drawn on a plane by their distance and bearing from the near end of the
/// first, and measured there. Within 200 km of it that is off by less than 0.1 %.
///
/// Source: azimuthal equidistant projection of WGS 84; plane geometry.
#[must_use]
pub fn apart(one: [Position; 2], other: [Position; 2]) -> Metres {
    let from = |to: Position| {
        geodesy::inverse(one[0], to).map_or([0.0, 0.0], |found| {
            let (east, north) = (libm::sin(found.azimuth.0.to_radians()), libm::cos(found.azimuth.0.to_radians()));
            [found.distance.0 * east, found.distance.0 * north]
        })
    };
    let (a, b) = ([[0.0, 0.0], from(one[1])], other.map(from));
    if cross(a, b) {
        return Metres(0.0);
    }
    let distances = [to_line(a[0], b), to_line(a[1], b), to_line(b[0], a), to_line(b[1], a)];
    Metres(distances.into_iter().fold(f64::INFINITY, f64::min))
}

type Point = [f64; 2];

/// Distance of a point from a straight line between two others.
fn to_line(point: Point, [start, end]: [Point; 2]) -> f64 {
    let along = [end[0] - start[0], end[1] - start[1]];
    let length = along[0] * along[0] + along[1] * along[1];
    let share =
        if length > 0.0 { ((point[0] - start[0]) * along[0] + (point[1] - start[1]) * along[1]) / length } else { 0.0 };
    let share = share.clamp(0.0, 1.0);
    libm::hypot(point[0] - start[0] - share * along[0], point[1] - start[1] - share * along[1])
}

/// Whether two straight lines cross: the ends of each lie on both sides of the other.
fn cross(one: [Point; 2], other: [Point; 2]) -> bool {
    let side = |[start, end]: [Point; 2], point: Point| {
        (end[0] - start[0]) * (point[1] - start[1]) - (end[1] - start[1]) * (point[0] - start[0])
    };
    let parts = |line: [Point; 2], points: [Point; 2]| side(line, points[0]) * side(line, points[1]) < 0.0;
    parts(one, other) && parts(other, one)
}

fn lesser(one: Percent, other: Percent) -> Percent {
    if other < one { other } else { one }
}

/// Share of time in which two independent things are down at once.
fn product(one: Percent, other: Percent) -> Percent {
    Percent(one.0 * other.0 / 100.0)
}
