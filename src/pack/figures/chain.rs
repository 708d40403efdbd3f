//! A cable run from end to end: what it passes on its way from the radio to what feeds it.

use super::Figure;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point, times};
use crate::sheet::{EndSheet, RunSheet};
use crate::spec::{Carried, Entry, RunPlace};
use crate::voice::{Open, Voice};

const WIDTH: f64 = 178.0;
const ROW: f64 = 25.0;
const RADIO: f64 = 4.0;
const ENTRY: f64 = 104.0;
const FAR: f64 = WIDTH - 34.0;
const BOX: f64 = 30.0;

/// All runs of an end, one under the other; none where it has none.
pub(in crate::pack) fn chain(end: &EndSheet<'_>, voice: Voice) -> Option<Figure> {
    if end.runs.is_empty() {
        return None;
    }
    let mut height = 1.0;
    let mut drawing = Drawing::new(WIDTH, 1.0 + ROW * times(end.runs.len()));
    let mut told = Vec::new();
    for run in &end.runs {
        told.push(one(run, height, voice, &mut drawing));
        height += ROW;
    }
    Some(Figure::of(&drawing, told.join(" ")))
}

fn one(run: &RunSheet<'_>, top: f64, voice: Voice, drawing: &mut Drawing) -> String {
    let (resolved, port) = (run.resolved, &run.resolved.port.id);
    let wire = top + 10.0;
    let arrester_at = |place: RunPlace| resolved.run.arresters.iter().any(|used| used.at == place);
    let mut boxed = |at: f64, words: [&str; 2]| {
        drawing.rect((at, wire - 5.0), (BOX, 10.0), Fill::White, Some(Pen::Firm));
        drawing.text((at + BOX / 2.0, wire - 0.6), Anchor::Middle, 3.2, true, words[0]);
        drawing.text((at + BOX / 2.0, wire + 3.4), Anchor::Middle, 2.8, false, words[1]);
    };
    let power = run.carries(Carried::Power);
    let data = run.carries(Carried::Data);
    let out = run.carries(Carried::PowerOut);
    let duty = match (data, power || out) {
        (true, true) => "draw-data-power",
        (false, true) => "draw-power",
        _ => "draw-data",
    };
    let enters = resolved.run.enters();
    let far = match resolved.ends_at {
        Some(_) => "draw-radio",
        None if run.carries(Carried::PowerOut) => "draw-device",
        None if power => "draw-supply",
        None => "draw-network",
    };
    boxed(RADIO, [&voice.say("draw-radio"), &voice.with("draw-port", &[("port", &short(port))])]);
    let at = resolved.ends_at.map(|far| format!("{} {}", short(&far.hop.id), far.end));
    boxed(FAR, [&voice.say(far), &at.unwrap_or_else(|| voice.say(duty))]);
    // The cable leaves the radio downwards and comes up again, so that water drips off before the gland.
    let start = RADIO + BOX;
    drawing
        .path(&[(start, wire), (start + 3.0, wire + 5.0), (start + 7.0, wire + 5.0), (start + 10.0, wire)], Pen::Firm);
    drawing.line((start + 10.0, wire), (FAR, wire), Pen::Firm);
    drawing.text((start + 5.0, wire + 8.8), Anchor::Middle, 2.8, false, &voice.say("draw-drip-loop"));
    if arrester_at(RunPlace::Radio) {
        arrester((start + 20.0, wire), voice, drawing);
    }
    let wall = match enters {
        Entry::Building => Some("draw-wall"),
        Entry::Cabinet => Some("draw-cabinet"),
        Entry::None => None,
    };
    if let Some(wall) = wall {
        drawing.line((ENTRY, wire - 9.0), (ENTRY, wire + 9.0), Pen::Dashed);
        drawing.text((ENTRY, wire + 12.6), Anchor::Middle, 2.8, false, &voice.say(wall));
    }
    if arrester_at(RunPlace::Entry) || arrester_at(RunPlace::FarEnd) {
        arrester((ENTRY + 12.0, wire), voice, drawing);
    }
    let outdoor = voice.number(&resolved.run.outdoor);
    let words = voice.with("draw-outdoors", &[("length", &outdoor)]);
    drawing.text((80.0, wire - 2.0), Anchor::Middle, 3.2, true, &words);
    if let Some(indoor) = &resolved.run.indoor {
        let words = voice.with("draw-indoors", &[("length", &voice.number(indoor))]);
        drawing.text((ENTRY + 29.0, wire - 2.0), Anchor::Middle, 3.2, true, &words);
    }
    let open: [Open<'_>; 3] = [("port", port), ("length", &outdoor), ("number", &resolved.run.arresters.len())];
    voice.with(if wall.is_some() { "draw-chain-alt" } else { "draw-chain-outdoors-alt" }, &open)
}

/// An arrester is bonded to earth: the sign says where a bond must not be forgotten.
fn arrester((x, wire): Point, voice: Voice, drawing: &mut Drawing) {
    drawing.rect((x - 4.0, wire - 2.6), (8.0, 5.2), Fill::Grey, Some(Pen::Firm));
    drawing.text((x, wire - 3.6), Anchor::Middle, 2.8, false, &voice.say("draw-arrester"));
    drawing.line((x, wire + 2.6), (x, wire + 5.6), Pen::Firm);
    for (number, half) in [2.2, 1.4, 0.6].into_iter().enumerate() {
        let y = wire + 5.6 + times(number) * 0.9;
        drawing.line((x - half, y), (x + half, y), Pen::Firm);
    }
}

/// A name no longer than its box.
fn short(name: &str) -> String {
    const MOST: usize = 12;
    if name.chars().count() <= MOST { name.to_owned() } else { name.chars().take(MOST - 1).chain(['…']).collect() }
}
