//! From metres along the path and above the sea to places in the picture.

use std::fmt::Write as _;

use crate::sheet::{HopSheet, PathPoint};
use crate::units::Metres;

/// Size of the picture in its own units, a quarter of a millimetre each when it is as wide as a page.
pub(super) const SIZE: (f64, f64) = (712.0, 356.0);
/// The field the path is drawn in: left, right, top, bottom.
pub(super) const FIELD: (f64, f64, f64, f64) = (56.0, 656.0, 58.0, 268.0);
/// Columns of the field; of all points in one the highest is drawn.
const COLUMNS: usize = 600;

/// From metres to the field.
pub(super) struct Scale {
    pub(super) length: f64,
    pub(super) low: f64,
    pub(super) high: f64,
}

impl Scale {
    pub(super) fn of(sheet: &HopSheet<'_>, points: &[PathPoint]) -> Option<Self> {
        let length = sheet.path.distance.get()?.0;
        let lowest = points.iter().map(|point| point.ground.0).fold(f64::INFINITY, f64::min);
        let highest =
            points.iter().map(|point| point.top.0.max(point.line.0 + point.radius.0)).fold(f64::MIN, f64::max);
        let room = ((highest - lowest) * 0.06).max(2.0);
        let sound = length > 0.0 && lowest.is_finite() && highest.is_finite();
        sound.then_some(Self { length, low: lowest - room, high: highest + room })
    }

    pub(super) fn x(&self, distance: Metres) -> f64 {
        FIELD.0 + (FIELD.1 - FIELD.0) * distance.0 / self.length
    }

    pub(super) fn y(&self, height: Metres) -> f64 {
        FIELD.3 - (FIELD.3 - FIELD.2) * (height.0 - self.low) / (self.high - self.low)
    }

    /// How many times steeper the drawing is than the path.
    pub(super) fn exaggeration(&self) -> f64 {
        let (across, up) = ((FIELD.1 - FIELD.0) / self.length, (FIELD.3 - FIELD.2) / (self.high - self.low));
        up / across
    }
}

/// One point a column, the highest.
pub(super) fn thinned(points: &[PathPoint], scale: &Scale) -> Vec<PathPoint> {
    if points.len() <= COLUMNS {
        return points.to_vec();
    }
    let mut kept: Vec<PathPoint> = Vec::with_capacity(COLUMNS + 1);
    let column = |point: &PathPoint| scale.x(point.distance).floor();
    for point in points {
        match kept.last_mut() {
            Some(last) if column(last) >= column(point) => {
                if point.top > last.top {
                    *last = *point;
                }
            }
            _ => kept.push(*point),
        }
    }
    kept
}

/// A line along the points, at a height of each.
pub(super) fn joined(points: &[PathPoint], scale: &Scale, height: impl Fn(&PathPoint) -> Metres) -> String {
    points.iter().enumerate().fold(String::new(), |mut path, (number, point)| {
        let letter = if number == 0 { 'M' } else { 'L' };
        let _ = write!(path, "{letter}{:.1} {:.1} ", scale.x(point.distance), scale.y(height(point)));
        path
    })
}
