//! The scale of the meter with the target, the band to accept and the side lobes on it.

use super::Figure;
use crate::drawing::{Anchor, Drawing, Fill, Pen};
use crate::sheet::{EndSheet, Line, LobeReadingLines};
use crate::units::MeterVolts;
use crate::voice::{Open, Voice};

const WIDTH: f64 = 178.0;
const LEFT: f64 = 6.0;
const RIGHT: f64 = WIDTH - 6.0;
/// Where the scale itself lies.
const AXIS: f64 = 16.0;
const TALL: f64 = 7.0;

/// The scale of one end; none where the target or the range is not known.
pub(in crate::pack) fn scale(end: &EndSheet<'_>, voice: Voice) -> Option<Figure> {
    let (lines, range) = (&end.lines, &end.resolved.radio.readout.as_ref()?.range);
    let (least, most) = (range.min.value.0, range.max.value.0);
    let target = lines.target_voltage.get()?.0;
    if most <= least {
        return None;
    }
    let x = |volts: f64| LEFT + (volts.clamp(least, most) - least) / (most - least) * (RIGHT - LEFT);
    let mut drawing = Drawing::new(WIDTH, 28.0);

    let (from, to) = ends(&lines.voltage_at_least, &lines.voltage_at_most)?;
    drawing.rect((x(from), AXIS - TALL), (x(to) - x(from), TALL), Fill::Grey, Some(Pen::Firm));
    drawing.text(
        (f64::midpoint(x(from), x(to)), AXIS - TALL - 4.6),
        Anchor::Middle,
        3.4,
        true,
        &voice.say("draw-accept"),
    );
    for (key, lobes) in [("draw-one-on-lobe", one(end)), ("draw-both-on-lobe", both(&end.dish.both))] {
        let Some((from, to)) = lobes else { continue };
        // A band that lies wholly at the stop of the meter is no wider than the stop.
        let width = (x(to) - x(from)).max(1.2);
        let start = x(from).min(RIGHT - width);
        drawing.hatch((start, AXIS - TALL), (width, TALL));
        let (at, anchor) =
            if start + width > RIGHT - 20.0 { (RIGHT, Anchor::End) } else { (start + width / 2.0, Anchor::Middle) };
        drawing.text((at, AXIS - TALL - 1.2), anchor, 3.0, false, &voice.say(key));
    }

    drawing.line((LEFT, AXIS), (RIGHT, AXIS), Pen::Firm);
    let step = step(most - least);
    let mut number = (least / step).ceil();
    while number * step <= most + 1e-9 {
        let volts = number * step;
        drawing.line((x(volts), AXIS), (x(volts), AXIS + 1.6), Pen::Firm);
        drawing.text((x(volts), AXIS + 5.4), Anchor::Middle, 3.2, false, &voice.number(format!("{volts:.1} V")));
        number += 1.0;
    }
    let at = x(target);
    drawing.line((at, AXIS - TALL - 3.0), (at, AXIS + 8.0), Pen::Heavy);
    drawing.polygon(&[(at, AXIS + 6.4), (at - 1.5, AXIS + 9.4), (at + 1.5, AXIS + 9.4)], Fill::Black, None);
    let words = voice.with("draw-align-to", &[("reading", &voice.line(&lines.target_voltage))]);
    let (words_at, anchor) = if at > RIGHT - 30.0 { (at - 3.0, Anchor::End) } else { (at + 3.0, Anchor::Start) };
    drawing.text((words_at, AXIS + 10.4), anchor, 3.8, true, &words);
    let band = voice.band(&lines.voltage_at_least, &lines.voltage_at_most);
    let lobe = voice.band(&end.dish.here.voltage_at_least, &end.dish.here.voltage_at_most);
    let open: [Open<'_>; 3] = [("target", &voice.line(&lines.target_voltage)), ("band", &band), ("lobe", &lobe)];
    let alt = voice.with("draw-scale-alt", &open);
    Some(Figure::of(&drawing, alt))
}

/// A step between marks that leaves four to twelve of them.
fn step(range: f64) -> f64 {
    [0.1, 0.2, 0.5, 1.0, 2.0, 5.0].into_iter().find(|step| range / step <= 12.0).unwrap_or(10.0)
}

fn ends(one: &Line<MeterVolts>, other: &Line<MeterVolts>) -> Option<(f64, f64)> {
    let (one, other) = (one.get()?.0, other.get()?.0);
    Some((one.min(other), one.max(other)))
}

fn both(lines: &LobeReadingLines) -> Option<(f64, f64)> {
    ends(&lines.voltage_at_least, &lines.voltage_at_most)
}

/// The band of either end on a side lobe.
fn one(end: &EndSheet<'_>) -> Option<(f64, f64)> {
    let (here, there) = (both(&end.dish.here)?, both(&end.dish.there)?);
    Some((here.0.min(there.0), here.1.max(there.1)))
}
