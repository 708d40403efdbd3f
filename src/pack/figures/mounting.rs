//! Bracket, antenna and tilt from the side; bearing and norths from above.

use super::Figure;
use crate::drawing::{Anchor, Drawing, Fill, Pen};
use crate::pack::parts::way_up;
use crate::sheet::EndSheet;
use crate::voice::{Open, Voice};

const WIDTH: f64 = 178.0;
const HEIGHT: f64 = 50.0;

/// The mounting of one end; none where tilt or bearing is not known.
pub(in crate::pack) fn mounting(end: &EndSheet<'_>, voice: Voice) -> Option<Figure> {
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    side(end, voice, &mut drawing)?;
    above(end, voice, &mut drawing)?;
    let lines = &end.lines;
    let own = end.resolved;
    let key = if own.end.bracket.plate { "draw-mounting-plate-alt" } else { "draw-mounting-alt" };
    let (height, way_up) = (voice.given_in_both(&own.end.height), way_up(own.end.bracket.orientation, voice));
    let (tilt, bearing, magnetic) =
        (voice.line(&lines.tilt), voice.line(&lines.true_bearing), voice.line(&lines.magnetic_bearing));
    let open: [Open<'_>; 5] =
        [("height", &height), ("tilt", &tilt), ("way-up", &way_up), ("true", &bearing), ("magnetic", &magnetic)];
    let alt = voice.with(key, &open);
    Some(Figure::of(&drawing, alt))
}

fn side(end: &EndSheet<'_>, voice: Voice, drawing: &mut Drawing) -> Option<()> {
    const GROUND: f64 = 44.0;
    const POLE: f64 = 30.0;
    const CENTRE: f64 = 22.0;
    let own = end.resolved;
    let tilt = end.lines.tilt.get()?.0.to_radians();
    let (sin, cos) = (libm::sin(tilt), libm::cos(tilt));

    drawing.line((4.0, GROUND), (92.0, GROUND), Pen::Firm);
    drawing.text((4.0, GROUND + 4.6), Anchor::Start, 3.0, false, &voice.say("draw-ground"));
    drawing.rect((POLE - 2.2, 8.0), (4.4, GROUND - 8.0), Fill::White, Some(Pen::Firm));
    // The pole is not drawn to scale: a break says so.
    drawing.polygon(
        &[(POLE - 4.0, 36.0), (POLE + 4.0, 33.6), (POLE + 4.0, 35.6), (POLE - 4.0, 38.0)],
        Fill::White,
        None,
    );
    drawing.line((POLE - 4.0, 36.0), (POLE + 4.0, 33.6), Pen::Thin);
    drawing.line((POLE - 4.0, 38.0), (POLE + 4.0, 35.6), Pen::Thin);

    let reach = if own.end.bracket.plate { 14.0 } else { 8.0 };
    let pivot = (POLE + 2.2 + reach, CENTRE);
    drawing.rect((POLE - 3.6, CENTRE - 3.0), (7.2, 6.0), Fill::Grey, Some(Pen::Firm));
    drawing.rect((POLE + 3.6, CENTRE - 1.6), (reach - 1.4, 3.2), Fill::Grey, Some(Pen::Firm));
    if own.end.bracket.plate {
        drawing.text((POLE + 5.0, CENTRE + 6.4), Anchor::Start, 3.0, false, &voice.say("draw-plate"));
    }
    // Dish and box turn about the pivot; `y` grows downwards, so a tilt up turns them the other way.
    let turned = |x: f64, y: f64| (pivot.0 + x * cos + y * sin, pivot.1 - x * sin + y * cos);
    let radio = [turned(0.0, -4.0), turned(5.0, -4.0), turned(5.0, 4.0), turned(0.0, 4.0)];
    drawing.polygon(&radio, Fill::White, Some(Pen::Firm));
    let dish = [
        turned(5.0, -2.5),
        turned(9.0, -9.0),
        turned(10.0, -9.0),
        turned(10.0, 9.0),
        turned(9.0, 9.0),
        turned(5.0, 2.5),
    ];
    drawing.polygon(&dish, Fill::White, Some(Pen::Heavy));
    drawing.circle(pivot, 0.9, Fill::Black, Pen::Firm);

    let (front, far) = (turned(11.0, 0.0), turned(40.0, 0.0));
    drawing.arrow(front, far, Pen::Firm);
    drawing.line((pivot.0 + 11.0, CENTRE), (90.0, CENTRE), Pen::Dashed);
    let above = if sin > 0.0 { CENTRE + 5.0 } else { CENTRE - 2.4 };
    let key = if sin > 0.0 { "draw-tilt-up" } else { "draw-tilt-down" };
    let tilt = voice.line(&end.lines.tilt);
    let tilt = voice.with(key, &[("tilt", &tilt.trim_start_matches('−'))]);
    drawing.text((90.0, above), Anchor::End, 4.2, true, &tilt);
    let bracket = voice.with("draw-bracket", &[("way-up", &way_up(own.end.bracket.orientation, voice))]);
    drawing.text((8.0, 6.0), Anchor::Start, 3.4, true, &bracket);

    drawing.dimension((22.0, GROUND), (22.0, CENTRE));
    drawing.line((18.0, CENTRE), (POLE - 4.0, CENTRE), Pen::Thin);
    drawing.text((20.6, 34.0), Anchor::End, 3.4, true, &voice.number(&own.end.height));
    Some(())
}

fn above(end: &EndSheet<'_>, voice: Voice, drawing: &mut Drawing) -> Option<()> {
    const MIDDLE: (f64, f64) = (120.0, 26.0);
    const ROUND: f64 = 17.0;
    let lines = &end.lines;
    let at = |bearing: f64, radius: f64| {
        let angle = bearing.to_radians();
        (MIDDLE.0 + radius * libm::sin(angle), MIDDLE.1 - radius * libm::cos(angle))
    };
    drawing.circle(MIDDLE, ROUND, Fill::None, Pen::Thin);
    for quarter in 0..12_u8 {
        let bearing = f64::from(quarter) * 30.0;
        drawing.line(at(bearing, ROUND), at(bearing, ROUND - 1.6), Pen::Thin);
    }
    for (letter, bearing) in [("draw-east", 90.0), ("draw-south", 180.0), ("draw-west", 270.0)] {
        let (x, y) = at(bearing, ROUND + 3.2);
        drawing.text((x, y + 1.1), Anchor::Middle, 3.2, false, &voice.say(letter));
    }
    drawing.arrow(MIDDLE, at(0.0, ROUND + 3.0), Pen::Thin);
    let declination = lines.declination.get()?.0;
    drawing.arrow(MIDDLE, at(declination, ROUND + 3.0), Pen::Dotted);
    // The two norths lie close together: each is named on its own side.
    let (true_side, magnetic_side) =
        if declination < 0.0 { (Anchor::Start, Anchor::End) } else { (Anchor::End, Anchor::Start) };
    let shift = |anchor| if anchor == Anchor::Start { 1.6 } else { -1.6 };
    let (x, y) = at(0.0, ROUND + 4.0);
    drawing.text((x + shift(true_side), y), true_side, 3.2, true, &voice.say("draw-true-north"));
    let (x, y) = at(declination, ROUND + 4.0);
    drawing.text((x + shift(magnetic_side), y), magnetic_side, 3.2, false, &voice.say("draw-magnetic-north"));

    let bearing = lines.true_bearing.get()?.0;
    drawing.arrow(MIDDLE, at(bearing, ROUND + 1.0), Pen::Heavy);
    drawing.circle(MIDDLE, 2.2, Fill::White, Pen::Firm);
    let words_at = MIDDLE.0 + ROUND + 9.0;
    drawing.text(
        (words_at, 38.0),
        Anchor::Start,
        4.2,
        true,
        &voice.with("draw-true", &[("bearing", &voice.line(&lines.true_bearing))]),
    );
    let magnetic = voice.with("draw-compass", &[("bearing", &voice.line(&lines.magnetic_bearing))]);
    drawing.text((words_at, 43.0), Anchor::Start, 3.4, false, &magnetic);
    Some(())
}
