//! What is written beside the worst point, and below the field.

use super::canvas::Canvas;
use super::scale::{FIELD, SIZE, Scale};
use super::words::{cut, verdict};
use crate::sheet::{Fine, HopSheet, PathPoint};
use crate::spec::ObstacleKind;
use crate::voice::Open;

/// Line heights of the text below the field.
const LINE: f64 = 16.0;

pub(super) fn worst(canvas: &mut Canvas, sheet: &HopSheet<'_>, scale: &Scale) {
    let (profile, lines) = (&sheet.profile, &sheet.profile.lines);
    let Some(worst) = profile.obstruction.as_ref().or(profile.worst.as_ref()) else { return };
    let point = profile.along().into_iter().find(|point| point.distance == worst.distance);
    let Some(point) = point else { return };
    let (x, line, top) = (scale.x(worst.distance), scale.y(point.line), scale.y(point.top));
    let voice = canvas.voice;
    let (what, distance) = (voice.spoken(&worst.what.said()), voice.number(worst.distance));
    let words = match (&profile.obstruction, lines.clearance.get(), lines.fraction.get(), lines.needed.get()) {
        (Some(_), ..) => {
            let by = voice.number(Fine(point.top - point.line));
            voice.with("profile-into-line", &[("what", &what), ("distance", &distance), ("by", &by)])
        }
        (None, Some(clearance), Some(fraction), Some(needed)) => {
            let (clearance, fraction, needed) = (voice.number(clearance), voice.number(fraction), voice.number(needed));
            let open: [Open<'_>; 5] = [
                ("what", &what),
                ("distance", &distance),
                ("clearance", &clearance),
                ("fraction", &fraction),
                ("needed", &needed),
            ];
            voice.with("profile-worst", &open)
        }
        _ => return,
    };
    canvas.stroke(&format!("M{x:.1} {:.1} V{:.1}", FIELD.2 - 16.0, line.min(top)), 0.6, "3 2");
    canvas.stroke(&format!("M{x:.1} {line:.1} V{top:.1} M{:.1} {top:.1} H{:.1}", x - 4.0, x + 4.0), 2.0, "");
    // Beside the leader, and never over the edge: letters are some 6.4 wide on the mean.
    let words = cut(&words, 105);
    let width = 6.4 * f64::from(u8::try_from(words.chars().count()).unwrap_or(u8::MAX));
    let at = (x - width / 2.0).min(SIZE.0 - 4.0 - width).max(4.0);
    canvas.text(at, FIELD.2 - 22.0, "start", &words);
}

pub(super) fn caption(canvas: &mut Canvas, sheet: &HopSheet<'_>, points: &[PathPoint], scale: &Scale) {
    let mut y = FIELD.3 + 17.0 + 1.4 * LINE;
    let mut x = FIELD.0;
    let voice = canvas.voice;
    for (dashes, width, key) in [("", 1.7, "profile-line"), ("7 4", 0.9, "profile-f1"), ("1.5 3", 0.9, "profile-06f1")]
    {
        let words = voice.say(key);
        canvas.stroke(&format!("M{x:.1} {:.1} h28", y - 4.5), width, dashes);
        canvas.text(x + 33.0, y, "start", &words);
        x += 52.0 + 7.0 * f64::from(u8::try_from(words.chars().count()).unwrap_or(u8::MAX));
    }
    let kinds = ObstacleKind::ALL
        .into_iter()
        .filter(|kind| points.iter().any(|point| point.standing.is_some_and(|(_, of)| of == *kind)))
        .map(|kind| match kind {
            ObstacleKind::Building => "profile-building",
            ObstacleKind::Trees => "profile-trees",
            ObstacleKind::Crane => "profile-crane",
            ObstacleKind::PowerLine => "profile-power-line",
        });
    let things: Vec<String> = ["profile-ground"].into_iter().chain(kinds).map(|key| voice.say(key)).collect();
    canvas.text(x, y, "start", &things.join("; "));
    y += LINE;
    let steeper = voice.number(format!("{:.1}", scale.exaggeration()));
    let frequency = voice.number(sheet.profile.lower_frequency().unwrap_or_default());
    let facts = voice.with("profile-facts", &[("times", &steeper), ("frequency", &frequency)]);
    canvas.text(FIELD.0, y, "start", &facts);
    y += LINE;
    canvas.text(FIELD.0, y, "start", &cut(&verdict(sheet, voice), 100));
}
