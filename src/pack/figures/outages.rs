//! What takes how much of the time, cause by cause.

use super::Figure;
use crate::drawing::{Anchor, Drawing, Fill, Pen, times};
use crate::sheet::{HopSheet, Line, Shown};
use crate::voice::Voice;

const WIDTH: f64 = 178.0;
const LEFT: f64 = 62.0;
const RIGHT: f64 = WIDTH - 42.0;
const ROW: f64 = 6.4;
const TOP: f64 = 7.0;
/// The axis runs from 0.0001 % to 1 %, a decade of outage a fourth of it.
const DECADES: (f64, f64) = (-4.0, 0.0);

/// A cause with its outage in the average year and in the worst month: the share, and how it is told.
struct Cause {
    words: String,
    year: Option<(f64, String)>,
    month: Option<(f64, String)>,
}

/// Bars of outage by cause, both directions; none where not even rain is known.
pub(in crate::pack) fn outages(sheet: &HopSheet<'_>, voice: Voice) -> Option<Figure> {
    let service = &sheet.service;
    service.rain_outage.get()?;
    let rain = if sheet.path.snow_factor.get().is_some() { "outage-rain-and-snow" } else { "outage-rain" };
    let causes = [
        cause(voice, rain, &service.rain_outage, &service.rain_worst_month),
        cause(voice, "outage-multipath", &service.multipath, &service.multipath_worst_month),
        cause(voice, "outage-crossing-rain", &service.crossing_rain, &service.crossing_rain_worst_month),
        cause(voice, "outage-crossing-air", &service.crossing_clear_air, &service.crossing_worst_month),
        cause(voice, "outage-equipment", &service.equipment, &service.equipment),
        cause(voice, "outage-supply", &service.supply, &service.supply),
    ];
    let known: Vec<Cause> = causes.into_iter().filter(|cause| cause.year.is_some()).collect();
    let bottom = TOP + ROW * times(known.len());
    let mut drawing = Drawing::new(WIDTH, bottom + 10.6);
    for (share, words) in [(-4.0, "0.0001 %"), (-3.0, "0.001 %"), (-2.0, "0.01 %"), (-1.0, "0.1 %"), (0.0, "1 %")] {
        drawing.line((x(share), TOP - 2.0), (x(share), bottom), Pen::Thin);
        drawing.text((x(share), TOP - 3.4), Anchor::Middle, 3.0, false, &voice.number(words));
    }
    let mut told = Vec::new();
    for (number, Cause { words, year, month }) in known.iter().enumerate() {
        let y = TOP + ROW * times(number);
        drawing.text((LEFT - 2.0, y + 4.2), Anchor::End, 3.2, false, words);
        for (bar, offset, fill) in [(year, 0.6, Fill::Black), (month, 3.2, Fill::White)] {
            let Some((share, _)) = bar else { continue };
            let end = x(libm::log10(share.max(1e-9)));
            drawing.rect((LEFT, y + offset), ((end - LEFT).max(0.4), 2.2), fill, Some(Pen::Firm));
        }
        if let Some((_, text)) = year {
            drawing.text((RIGHT + 3.0, y + 4.2), Anchor::Start, 3.0, false, text);
            told.push(format!("{words}: {text}"));
        }
    }
    let allowed = 100.0 - sheet.target.availability.value().0;
    let asked = voice.with("draw-allowed", &[("outage", &voice.number(crate::units::Percent(allowed)))]);
    let at = x(libm::log10(allowed.max(1e-9)));
    drawing.line((at, TOP - 2.0), (at, bottom + 3.0), Pen::Dashed);
    drawing.text((at, bottom + 5.8), Anchor::Middle, 3.2, true, &asked);
    drawing.rect((LEFT, bottom + 7.6), (5.0, 2.4), Fill::Black, Some(Pen::Thin));
    drawing.text((LEFT + 6.4, bottom + 10.0), Anchor::Start, 3.0, false, &voice.say("average-year"));
    drawing.rect((LEFT + 36.0, bottom + 7.6), (5.0, 2.4), Fill::White, Some(Pen::Firm));
    drawing.text((LEFT + 42.4, bottom + 10.0), Anchor::Start, 3.0, false, &voice.say("worst-month"));
    let alt = voice.with("draw-outages-alt", &[("causes", &told.join("; ")), ("asked", &asked)]);
    Some(Figure::of(&drawing, alt))
}

fn cause<Y: Shown, M: Shown>(voice: Voice, key: &str, year: &Line<Y>, month: &Line<M>) -> Cause {
    Cause { words: voice.say(key), year: share(voice, year), month: share(voice, month) }
}

fn share<T: Shown>(voice: Voice, line: &Line<T>) -> Option<(f64, String)> {
    Some((line.value().ok()?.number()?.0, voice.line(line)))
}

fn x(decade: f64) -> f64 {
    let share = (decade - DECADES.0) / (DECADES.1 - DECADES.0);
    LEFT + share.clamp(0.0, 1.0) * (RIGHT - LEFT)
}
