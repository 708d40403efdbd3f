//! The straight line between the antennas over the ground, looked at point by point.

use super::relief::Profile;
use super::what::What;
use crate::finding::Spot;
use crate::physics::clearance::{Point, Raise, Sightline};
use crate::units::{Gigahertz, Metres};

/// The point that leaves least of the Fresnel zone.
#[derive(Debug, Clone)]
pub struct Worst {
    /// Distance from end a.
    pub distance: Metres,
    /// Top of what stands there.
    pub top: Metres,
    /// Ground there.
    pub ground: Metres,
    /// What it is.
    pub what: What,
    /// Where it is written.
    pub spot: Spot,
}

/// A point under the line, with what it leaves.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pick {
    /// Its number in the profile.
    pub(super) number: usize,
    pub(super) point: Point,
    /// Height of the line over it, the uncertainty of its height taken off.
    pub(super) clearance: Metres,
    /// Radius of the first Fresnel zone there.
    pub(super) radius: Metres,
}

impl Pick {
    /// What it leaves in radii of the Fresnel zone: next to the ends little is asked for.
    pub(super) fn radii(&self) -> f64 {
        self.clearance.0 / self.radius.0
    }
}

/// Everything a clearance is computed from.
#[derive(Debug, Clone)]
pub(super) struct Scene<'p> {
    pub(super) profile: &'p Profile,
    /// The line at `k` of 4/3.
    pub(super) sight: Sightline,
    /// The lower frequency, whose Fresnel zone is the wider.
    pub(super) frequency: Gigahertz,
}

impl Scene<'_> {
    fn uncertainty(&self) -> Metres {
        self.profile.uncertainty.as_ref().map_or(Metres(0.0), |given| given.value)
    }

    /// The same line at another `k`.
    pub(super) fn at(&self, k: f64) -> Self {
        Self { sight: Sightline { k, ..self.sight }, ..self.clone() }
    }

    /// What a point leaves.
    pub(super) fn pick(&self, number: usize, point: Point) -> Pick {
        let clearance = self.sight.clearance(point) - self.uncertainty();
        Pick { number, point, clearance, radius: self.sight.radius(self.frequency, point) }
    }

    /// What a point has over the clearance asked for.
    pub(super) fn in_hand(&self, fraction: f64, point: Point) -> Metres {
        let pick = self.pick(0, point);
        pick.clearance - Metres(fraction * pick.radius.0)
    }

    /// The points between the ends, with a share of the growth of what stands there.
    fn between(&self, share: f64) -> impl Iterator<Item = (usize, Point)> {
        let profile = self.profile;
        let points =
            profile.points.iter().enumerate().map(move |(number, point)| {
                (number, Point { distance: point.distance, top: profile.top(point, share) })
            });
        points.filter(|(_, point)| self.sight.spans(*point))
    }

    /// The point that leaves the least of the Fresnel zone.
    pub(super) fn worst(&self, share: f64) -> Option<Pick> {
        let picks = self.between(share).map(|(number, point)| self.pick(number, point));
        picks.min_by(|one, other| one.radii().total_cmp(&other.radii()))
    }

    /// The point over which the line is lowest, and how high it is there.
    pub(super) fn lowest(&self) -> Option<(Pick, Metres)> {
        let valued = self.between(0.0).map(|(number, point)| (number, point, self.sight.clearance(point)));
        let (number, point, height) = valued.min_by(|one, other| one.2.0.total_cmp(&other.2.0))?;
        Some((self.pick(number, point), height))
    }

    /// What a message says of a point.
    pub(super) fn describe(&self, pick: Pick) -> Worst {
        let ground = &self.profile.points[pick.number];
        let standing = ground.standing.map(|standing| &self.profile.standing[standing]);
        Worst {
            distance: pick.point.distance,
            top: pick.point.top,
            ground: ground.ground,
            what: standing.map_or(What::BARE_GROUND, |standing| standing.what.clone()),
            spot: standing.map_or_else(|| self.spot(pick.number), |standing| standing.spot.clone()),
        }
    }

    /// Where a point is written, or the one before it.
    pub(super) fn spot(&self, number: usize) -> Spot {
        let written = self.profile.points[..=number].iter().rev().find_map(|point| point.spot.clone());
        written.unwrap_or_else(|| self.profile.spot.clone())
    }

    /// What must be raised so that the clearance asked for is kept.
    pub(super) fn raise(&self, fraction: f64, share: f64, which: Raise) -> Metres {
        let tops = self.profile.tops(share, self.uncertainty());
        self.sight.least_raise(self.frequency, fraction, &tops, which)
    }
}
