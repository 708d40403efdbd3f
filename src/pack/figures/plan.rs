//! The hop from above, north up.

use super::Figure;
use crate::drawing::{Anchor, Drawing, Fill, Pen};
use crate::sheet::HopSheet;
use crate::spec::{Both, EndName};
use crate::voice::Voice;

const WIDTH: f64 = 84.0;
const HEIGHT: f64 = 48.0;

/// The plan of a hop; none where distance or bearing is not known.
pub(in crate::pack) fn plan(sheet: &HopSheet<'_>, voice: Voice) -> Option<Figure> {
    let (distance, bearing) = (sheet.path.distance.get()?.0, sheet.ends.a.lines.true_bearing.get()?.0);
    let angle = bearing.to_radians();
    let (east, north) = (libm::sin(angle), libm::cos(angle));
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    // Room for the two names on all sides; the hop fills the rest, whichever way it runs.
    let (wide, tall) = (WIDTH - 40.0, HEIGHT - 22.0);
    let length = (wide / east.abs().max(1e-9)).min(tall / north.abs().max(1e-9));
    let middle = (WIDTH / 2.0 - 2.0, HEIGHT / 2.0 - 4.0);
    let at = |share: f64| (middle.0 + share * length * east, middle.1 - share * length * north);
    let ends = Both { a: -1.0, b: 1.0 };
    let points = ends.map(|away| at(0.5 * away));
    drawing.line(points.a, points.b, Pen::Heavy);
    for end in EndName::BOTH {
        let (point, away) = (points[end], ends[end]);
        drawing.circle(point, 1.6, Fill::White, Pen::Firm);
        let (x, y) = (point.0 + away * 4.6 * east, point.1 - away * 4.6 * north);
        drawing.text((x, y + 1.4), Anchor::Middle, 4.2, true, end.letter());
    }
    drawing.arrow((WIDTH - 7.0, 16.0), (WIDTH - 7.0, 5.0), Pen::Firm);
    drawing.text((WIDTH - 7.0, 20.0), Anchor::Middle, 3.4, true, &voice.say("draw-north"));

    let millimetre = distance / length;
    let round = scale_length(millimetre * 30.0);
    let bar = round / millimetre;
    drawing.rect((4.0, HEIGHT - 7.0), (bar / 2.0, 1.4), Fill::Black, Some(Pen::Thin));
    drawing.rect((4.0 + bar / 2.0, HEIGHT - 7.0), (bar / 2.0, 1.4), Fill::White, Some(Pen::Thin));
    let words = if round >= 1000.0 { format!("{} km", round / 1000.0) } else { format!("{round} m") };
    drawing.text((4.0, HEIGHT - 1.6), Anchor::Start, 3.0, false, "0");
    drawing.text((4.0 + bar, HEIGHT - 1.6), Anchor::Middle, 3.0, false, &words);
    let (far, bearing) = (voice.line(&sheet.path.distance), voice.line(&sheet.ends.a.lines.true_bearing));
    let alt = voice.with("draw-plan-alt", &[("distance", &far), ("bearing", &bearing)]);
    Some(Figure::of(&drawing, alt))
}

/// The greatest of 1, 2 and 5 times a power of ten that is not longer.
fn scale_length(most: f64) -> f64 {
    let decade = libm::pow(10.0, libm::floor(libm::log10(most.max(1e-3))));
    [5.0, 2.0, 1.0].into_iter().map(|step| step * decade).find(|length| *length <= most).unwrap_or(decade)
}
