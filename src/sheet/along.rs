//! The path point by point, for whoever draws it or cannot see the drawing.

use std::fmt::Write as _;

use super::profile::ProfileSheet;
use super::relief::GroundPoint;
use crate::physics::clearance::Point;
use crate::spec::ObstacleKind;
use crate::units::Metres;

/// A point of the path under the straight line, all heights raised by the bulge of the Earth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PathPoint {
    /// Distance from end a.
    pub distance: Metres,
    /// The ground.
    pub ground: Metres,
    /// The top of what stands on it, or the ground.
    pub top: Metres,
    /// What stands there: its number and its kind.
    pub standing: Option<(usize, ObstacleKind)>,
    /// The straight line between the antennas.
    pub line: Metres,
    /// Radius of the first Fresnel zone.
    pub radius: Metres,
}

impl ProfileSheet {
    /// Every point between and at the ends as it stands under the straight line: heights are raised by the bulge of the
    /// Earth at k = 4/3, so that the line is straight over them. Empty without a profile.
    #[must_use]
    pub fn along(&self) -> Vec<PathPoint> {
        let (Ok(profile), Some(sight), Some(frequency)) = (&self.ground, &self.sight, self.lower_frequency()) else {
            return Vec::new();
        };
        let inside = |point: &&GroundPoint| point.distance <= sight.length;
        let at = |point: &GroundPoint| {
            let here = Point { distance: point.distance, top: profile.top(point, 0.0) };
            let share = point.distance.0 / sight.length.0;
            let line = sight.near + Metres((sight.far - sight.near).0 * share);
            let bulge = line - sight.height(here);
            PathPoint {
                distance: point.distance,
                ground: point.ground + bulge,
                top: here.top + bulge,
                standing: point.standing.and_then(|number| Some((number, profile.standing[number].what.kind?))),
                line,
                radius: sight.radius(frequency, here),
            }
        };
        profile.points.iter().filter(inside).map(at).collect()
    }

    /// The clearance at every point as comma-separated lines, for whoever cannot see the drawing.
    #[must_use]
    pub fn table(&self) -> String {
        let mut text = "distance [m],ground [m],obstacle [m],kind,bulge [m],clearance [m],F1 [m],c/F1\n".to_owned();
        let raised = self.along();
        let (Ok(profile), Some(sight)) = (&self.ground, &self.sight) else { return text };
        let uncertainty = self.lines.uncertainty.get().map_or(0.0, |u| u.0.0);
        for (point, raised) in profile.points.iter().zip(&raised) {
            let here = Point { distance: point.distance, top: profile.top(point, 0.0) };
            let (clearance, radius) = (sight.clearance(here).0 - uncertainty, raised.radius.0);
            let share = if sight.spans(here) { format!("{:.2}", clearance / radius) } else { String::new() };
            let (height, kind) = match raised.standing {
                Some((number, kind)) => (format!("{:.2}", profile.standing[number].height.0), kind.word()),
                None => (String::new(), ""),
            };
            let bulge = (raised.ground - point.ground).0;
            let _ = writeln!(
                text,
                "{:.2},{:.2},{height},{kind},{bulge:.2},{clearance:.2},{radius:.2},{share}",
                point.distance.0, point.ground.0
            );
        }
        text
    }
}
