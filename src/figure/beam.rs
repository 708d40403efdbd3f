//! The line between the antennas, the zones around it and the ends it runs between.

use super::canvas::Canvas;
use super::scale::{FIELD, SIZE, Scale, joined};
use super::words::cut;
use crate::sheet::{HopSheet, PathPoint};
use crate::units::Metres;
use crate::voice::Open;

pub(super) fn beam(canvas: &mut Canvas, points: &[PathPoint], scale: &Scale) {
    for (share, dashes) in [(1.0, "7 4"), (0.6, "1.5 3")] {
        for side in [1.0, -1.0] {
            let edge = joined(points, scale, |point| point.line + Metres(side * share * point.radius.0));
            canvas.stroke(&edge, 0.9, dashes);
        }
    }
    let line = joined(points, scale, |point| point.line);
    canvas.stroke(&line, 1.7, "");
}

pub(super) fn ends(canvas: &mut Canvas, sheet: &HopSheet<'_>, scale: &Scale) {
    // So that two of them fit side by side.
    let room = 28;
    for (end, x, anchor) in [(&sheet.ends.a, FIELD.0, "start"), (&sheet.ends.b, FIELD.1, "end")] {
        let (site, own) = (end.resolved.site, end.resolved.end);
        let ground = site.ground_height.value;
        let antenna = ground + own.height.value;
        let path = format!("M{x:.1} {:.1} L{x:.1} {:.1}", scale.y(ground), scale.y(antenna));
        canvas.stroke(&path, 2.6, "");
        canvas.dot(x, scale.y(antenna));
        let title = cut(&site.title, room);
        let edge = if anchor == "start" { 4.0 } else { SIZE.0 - 4.0 };
        let height = canvas.voice.number(antenna);
        let open: [Open<'_>; 3] = [("end", &end.name), ("site", &title), ("height", &height)];
        let words = canvas.voice.with("profile-end", &open);
        canvas.text(edge, 14.0, anchor, &words);
    }
}
