//! Trees that leave enough today and too little later.

use super::relief::{GroundPoint, Standing, years};
use super::scene::Scene;
use super::shown::{Fine, Radii};
use super::what::What;
use crate::finding::Spot;
use crate::physics::clearance::{Point, Raise};
use crate::spec::Date;
use crate::units::Metres;

/// Trees that leave enough today and too little later.
#[derive(Debug, Clone)]
pub struct Outgrown {
    /// What grows.
    pub what: What,
    /// Where it is written.
    pub spot: Spot,
    /// Year in which the clearance falls below what is asked for.
    pub year: u16,
    /// Distance from end a of the point at fault.
    pub distance: Metres,
    /// Clearance in hand on the last day of growth.
    pub left: Radii,
    /// What both ends must go up by to keep it.
    pub raise: Fine,
}

/// Whether anything on the path grows.
pub(super) fn grows(scene: &Scene<'_>) -> bool {
    scene.profile.standing.iter().any(|standing| standing.growth.0 > 0.0)
}

/// The first trees that leave less than is asked for, where all is well today.
pub(super) fn outgrown(scene: &Scene<'_>, fraction: f64, today: Date) -> Option<Outgrown> {
    let (now, later) = (scene.worst(0.0)?.radii() - fraction, scene.worst(1.0)?.radii() - fraction);
    if now < 0.0 || later >= 0.0 {
        return None;
    }
    let from = years(scene.profile.date.unwrap_or(today));
    let fails = |point: &GroundPoint| -> Option<(f64, Metres, &Standing)> {
        let standing = &scene.profile.standing[point.standing?];
        let here = Point { distance: point.distance, top: scene.profile.top(point, 0.0) };
        let spare = scene.in_hand(fraction, here);
        let in_time = standing.growth > spare && scene.sight.spans(here);
        in_time.then(|| (standing.years * spare.0 / standing.growth.0, point.distance, standing))
    };
    let all = scene.profile.points.iter().filter_map(fails);
    let (years, distance, standing) = all.min_by(|one, other| one.0.total_cmp(&other.0))?;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a year of the common era")]
    let year = (from + years).floor() as u16;
    Some(Outgrown {
        what: standing.what.clone(),
        spot: standing.spot.clone(),
        year,
        distance,
        left: Radii(later),
        raise: Fine(scene.raise(fraction, 1.0, Raise::Both)),
    })
}
