//! How much of the year each capacity is there.

use super::Figure;
use crate::drawing::{Anchor, Drawing, Fill, Pen, times};
use crate::sheet::{Direction, HopSheet, State};
use crate::spec::Both;
use crate::voice::Voice;

const WIDTH: f64 = 178.0;
const LEFT: f64 = 62.0;
const RIGHT: f64 = WIDTH - 8.0;
const ROW: f64 = 6.4;
const TOP: f64 = 7.0;
/// The axis runs from 99 % to 99.999 %: a decade of outage is a third of it.
const DECADES: (f64, f64) = (2.0, 5.0);

/// Bars of availability by capacity, both directions; none where nothing is known of any state.
pub(in crate::pack) fn grades(sheet: &HopSheet<'_>, voice: Voice) -> Option<Figure> {
    let known =
        |direction: &Direction<'_>| direction.states.iter().any(|state| state.lines.availability.get().is_some());
    if !sheet.directions.iter().any(known) {
        return None;
    }
    let Both { a: there, b: back } = sheet.directions.each_ref();
    let rows = there.states.len().max(back.states.len());
    let bottom = TOP + ROW * times(rows);
    let mut drawing = Drawing::new(WIDTH, bottom + 10.6);
    for (share, words) in [(2.0, "99 %"), (3.0, "99.9 %"), (4.0, "99.99 %"), (5.0, "99.999 %")] {
        drawing.line((x(share), TOP - 2.0), (x(share), bottom), Pen::Thin);
        drawing.text((x(share), TOP - 3.4), Anchor::Middle, 3.0, false, &voice.number(words));
    }
    let mut told = Vec::new();
    for number in 0..rows {
        let y = TOP + ROW * times(number);
        if let Some(state) = there.states.get(number) {
            let words = format!("{}, {}", state.title, voice.line(&state.lines.capacity));
            drawing.text((LEFT - 2.0, y + 4.2), Anchor::End, 3.2, there.objective() == Some(number), &words);
            told.push(format!("{words}: {}", voice.line(&state.lines.availability)));
        }
        bar(there.states.get(number), y, Fill::Black, &mut drawing);
        bar(back.states.get(number), y + 2.6, Fill::White, &mut drawing);
    }
    let wanted = nines(sheet.target.availability.value().0);
    drawing.line((x(wanted), TOP - 2.0), (x(wanted), bottom + 3.0), Pen::Dashed);
    let asked = voice.with("draw-asked", &[("availability", &voice.number(&sheet.target.availability.given))]);
    let anchor = if x(wanted) > RIGHT - 30.0 { Anchor::End } else { Anchor::Middle };
    drawing.text((x(wanted), bottom + 5.8), anchor, 3.2, true, &asked);
    drawing.rect((LEFT, bottom + 7.6), (5.0, 2.4), Fill::Black, Some(Pen::Thin));
    drawing.text((LEFT + 6.4, bottom + 10.0), Anchor::Start, 3.0, false, &voice.say("a-to-b"));
    drawing.rect((LEFT + 22.0, bottom + 7.6), (5.0, 2.4), Fill::White, Some(Pen::Firm));
    drawing.text((LEFT + 28.4, bottom + 10.0), Anchor::Start, 3.0, false, &voice.say("b-to-a"));
    let alt = voice.with("draw-grades-alt", &[("states", &told.join("; ")), ("asked", &asked)]);
    Some(Figure::of(&drawing, alt))
}

/// How many nines an availability has: 99.99 % has four.
fn nines(availability: f64) -> f64 {
    -libm::log10((100.0 - availability).max(1e-9) / 100.0)
}

fn x(nines: f64) -> f64 {
    let share = (nines - DECADES.0) / (DECADES.1 - DECADES.0);
    LEFT + share.clamp(0.0, 1.0) * (RIGHT - LEFT)
}

fn bar(state: Option<&State>, y: f64, fill: Fill, drawing: &mut Drawing) {
    if let Some(availability) = state.and_then(|state| state.lines.availability.get()) {
        let end = x(nines(availability.0));
        drawing.rect((LEFT, y + 0.6), ((end - LEFT).max(0.4), 2.2), fill, Some(Pen::Firm));
    }
}
