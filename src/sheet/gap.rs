//! A gap of the profile in which something could stand unseen.

use super::relief::{GroundPoint, Source};
use super::scene::Scene;
use super::shown::Fine;
use crate::finding::Spot;
use crate::physics::clearance::Point;
use crate::units::Metres;

/// What a profile may miss between two points: a tree or a house. Common practice, no source.
pub const UNSEEN_HEIGHT: Metres = Metres(10.0);

/// A gap of the profile in which something could stand unseen.
#[derive(Debug, Clone)]
pub struct Gap {
    /// Where it starts and ends, from end a.
    pub between: [Metres; 2],
    /// Clearance in hand over the ground beside it.
    pub left: Fine,
    /// Width of the Fresnel zone in the middle of the hop.
    pub zone: Fine,
    /// Where the second of its points is written.
    pub spot: Spot,
}

/// The gap between two points of the source, wider than the Fresnel zone, with the least clearance beside it, if that is
/// less than what could stand there unseen.
pub(super) fn gap(scene: &Scene<'_>, fraction: f64, unseen: Metres) -> Option<Gap> {
    let (profile, sight) = (scene.profile, &scene.sight);
    let middle = Point { distance: Metres(sight.length.0 / 2.0), top: Metres(0.0) };
    let zone = Metres(2.0 * sight.radius(scene.frequency, middle).0);
    if profile.spacing <= zone {
        return None;
    }
    let tiles = profile.source == Source::Tiles;
    // What lies next to the ends one sees from the site.
    let (first, last) = match (tiles, profile.points.first(), profile.points.last()) {
        (false, Some(first), Some(last)) => (first.distance, last.distance),
        _ => (profile.spacing, sight.length - profile.spacing),
    };
    let inside = |point: &GroundPoint| first < point.distance && point.distance < last;
    let given = profile.points.iter().enumerate().filter(|(_, point)| tiles || point.spot.is_some());
    let given: Vec<(usize, &GroundPoint)> = given.filter(|(_, point)| inside(point)).collect();
    // What is known to stand there is counted elsewhere; what is not stands on the ground.
    let left = |point: &GroundPoint| scene.in_hand(fraction, Point { distance: point.distance, top: point.ground });
    let wide = |pair: &[(usize, &GroundPoint)]| pair[1].1.distance - pair[0].1.distance > zone;
    // Points may lie closer together than the cells of the model they are from.
    let everywhere = profile.cell > zone;
    let inner = given.windows(2).filter(|pair| everywhere || wide(pair));
    let lower = |pair: &[(usize, &GroundPoint)]| {
        let (one, other) = (left(pair[0].1), left(pair[1].1));
        if one < other { one } else { other }
    };
    let worst = inner.min_by(|one, other| lower(one).0.total_cmp(&lower(other).0))?;
    let spare = lower(worst);
    (spare < unseen).then(|| Gap {
        between: [worst[0].1.distance, worst[1].1.distance],
        left: Fine(spare),
        zone: Fine(zone),
        spot: scene.spot(worst[1].0),
    })
}
