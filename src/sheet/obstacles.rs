//! What the obstacles on a path cost.

use super::relief::GroundPoint;
use super::scene::Scene;
use crate::physics::bullington;
use crate::spec::ObstacleKind;
use crate::units::{Decibels, Gigahertz, Metres};

/// Diffraction loss at a frequency: that of a single edge where one firm thing alone comes near the line.
pub(super) fn loss(scene: &Scene<'_>, frequency: Gigahertz) -> Decibels {
    /// Clearance in radii below which an edge costs something: `ν = -0.78`.
    const FREE: f64 = 0.78 / std::f64::consts::SQRT_2;
    let (profile, sight) = (scene.profile, &scene.sight);
    let tops = profile.tops(0.0, Metres(0.0));
    let mut near =
        profile.points.iter().zip(&tops).filter(|(_, top)| {
            sight.spans(**top) && sight.clearance(**top).0 < FREE * sight.radius(frequency, **top).0
        });
    let Some((first, _)) = near.next() else { return Decibels(0.0) };
    let firm = |point: &GroundPoint| {
        let standing = point.standing?;
        (profile.standing[standing].what.kind != Some(ObstacleKind::Trees)).then_some(standing)
    };
    let single = firm(first).is_some() && near.all(|(point, _)| firm(point) == firm(first));
    let found = bullington::diffraction(sight, frequency, &tops);
    if single { found.edge } else { found.terrain }
}
