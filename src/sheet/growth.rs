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
fn grows(scene: &Scene<'_>) -> bool {
    scene.profile.standing.iter().any(|standing| standing.growth.0 > 0.0)
}

/// The path at a `k`, and the fraction of the Fresnel zone asked for there.
pub(super) type At<'s, 'p> = (&'s Scene<'p>, f64);

/// What the trees leave when they are grown: at the `k` where that is less.
pub(super) fn in_hand(both: [At<'_, '_>; 2]) -> Option<Radii> {
    let left = both.map(|(scene, fraction)| Some(scene.worst(1.0)?.radii() - fraction));
    let [one, other] = left;
    grows(both[0].0).then_some(())?;
    Some(Radii(one?.min(other?)))
}

/// The first trees that leave less than is asked for at one of two `k`, where all is well there today.
pub(super) fn outgrown(both: [At<'_, '_>; 2], today: Date) -> Option<Outgrown> {
    let raise = both.map(|(scene, fraction)| scene.raise(fraction, 1.0, Raise::Both));
    let raise = if raise[0] < raise[1] { raise[1] } else { raise[0] };
    let found = both.into_iter().filter_map(|at| outgrown_at(at, today));
    found.min_by_key(|outgrown| outgrown.year).map(|outgrown| Outgrown { raise: Fine(raise), ..outgrown })
}

fn outgrown_at((scene, fraction): At<'_, '_>, today: Date) -> Option<Outgrown> {
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
