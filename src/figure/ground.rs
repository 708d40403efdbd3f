//! The ground and what stands on it.

use std::fmt::Write as _;

use super::canvas::Canvas;
use super::scale::{FIELD, Scale, joined};
use crate::sheet::PathPoint;
use crate::spec::ObstacleKind;

pub(super) fn ground(canvas: &mut Canvas, points: &[PathPoint], scale: &Scale) {
    let line = joined(points, scale, |point| point.ground);
    let corners = format!("{line} L{:.1} {:.1} L{:.1} {:.1} Z", FIELD.1, FIELD.3, FIELD.0, FIELD.3);
    canvas.hatched(&corners);
    canvas.stroke(&line, 1.4, "");
}

pub(super) fn standing(canvas: &mut Canvas, points: &[PathPoint], scale: &Scale) {
    let mut start = 0;
    while start < points.len() {
        let Some((number, kind)) = points[start].standing else {
            start += 1;
            continue;
        };
        let same = |point: &PathPoint| point.standing == Some((number, kind));
        let end = start + points[start..].iter().take_while(|point| same(point)).count();
        thing(canvas, kind, &points[start..end], scale);
        start = end;
    }
}

/// One thing on the ground, at the points it covers.
fn thing(canvas: &mut Canvas, kind: ObstacleKind, points: &[PathPoint], scale: &Scale) {
    let (Some(first), Some(last)) = (points.first(), points.last()) else { return };
    let sides = (scale.x(first.distance), scale.x(last.distance));
    let middle = f64::midpoint(sides.0, sides.1);
    let top = points.iter().map(|point| scale.y(point.top)).fold(f64::INFINITY, f64::min);
    let foot = points.iter().map(|point| scale.y(point.ground)).fold(f64::MIN, f64::max);
    match kind {
        ObstacleKind::Building => canvas.outlined(&outline(points, sides, scale), "#000"),
        ObstacleKind::Trees => canvas.outlined(&outline(points, sides, scale), "#fff"),
        ObstacleKind::Crane => {
            let path = format!(
                "M{middle:.1} {foot:.1} L{middle:.1} {top:.1} M{:.1} {top:.1} L{:.1} {top:.1}",
                middle - 4.0,
                middle + 10.0
            );
            canvas.stroke(&path, 1.6, "");
        }
        ObstacleKind::PowerLine => {
            let bar =
                |down: f64| format!(" M{:.1} {:.1} L{:.1} {:.1}", middle - 5.0, top + down, middle + 5.0, top + down);
            canvas.stroke(&format!("M{middle:.1} {foot:.1} L{middle:.1} {top:.1}{}{}", bar(0.0), bar(4.0)), 1.2, "");
        }
    }
}

/// The outline of something that has a width, never too narrow to be seen.
fn outline(points: &[PathPoint], (left, right): (f64, f64), scale: &Scale) -> String {
    const NARROW: f64 = 2.5;
    let middle = f64::midpoint(left, right);
    let (left, right) = (left.min(middle - NARROW), right.max(middle + NARROW));
    let first = scale.y(points[0].ground);
    let mut path = format!("M{left:.1} {first:.1} L{left:.1} {:.1} ", scale.y(points[0].top));
    if let [only] = points {
        let _ = write!(path, "L{right:.1} {:.1} L{right:.1} {:.1} ", scale.y(only.top), scale.y(only.ground));
    } else {
        for point in points {
            let _ = write!(path, "L{:.1} {:.1} ", scale.x(point.distance), scale.y(point.top));
        }
        for point in points.iter().rev() {
            let _ = write!(path, "L{:.1} {:.1} ", scale.x(point.distance), scale.y(point.ground));
        }
    }
    path + "Z"
}
