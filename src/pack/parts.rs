//! What a crew takes to one end, with quantities.

use std::fmt::Display;

use serde::Serialize;

use super::words::text_or;
use crate::network::{ResolvedEnd, ResolvedRun};
use crate::sheet::{EndSheet, FibreSheet, RunSheet, wrench};
use crate::spec::{AlignedBy, Arrester, Orientation, Plugs, RunPlace, Screening};
use crate::units::{Given, Kilograms, Millimetres};
use crate::voice::{Voice, shown};

/// Something to take, ticked off on the ground.
#[derive(Debug, Serialize)]
pub(super) struct PartRow {
    quantity: String,
    what: String,
    detail: String,
}

fn part(quantity: &dyn Display, what: String, detail: String) -> PartRow {
    PartRow { quantity: quantity.to_string(), what, detail }
}

/// Arresters of one model with the places they sit: `2`, `Surgoldt SG 10G/4`, `at the radio, …`.
pub(super) struct Arresters {
    pub number: usize,
    pub title: String,
    /// The impulse tests it has passed, in brackets; nothing where none is stated.
    pub tests: String,
    pub places: String,
}

/// The impulse tests of an arrester: ` (D1 2.5 kA, C2 5 kA)`.
fn tests(arrester: &Arrester, voice: Voice) -> String {
    let tests: Vec<String> = arrester
        .impulse_tests
        .iter()
        .map(|test| format!("{} {}", test.category.word(), voice.number(&test.current)))
        .collect();
    if tests.is_empty() { String::new() } else { format!(" ({})", tests.join(", ")) }
}

/// The arresters of a run, each model once.
pub(super) fn arresters(run: &ResolvedRun<'_>, voice: Voice) -> Vec<Arresters> {
    let mut models: Vec<Arresters> = Vec::new();
    for (arrester, used) in run.arresters.iter().zip(&run.run.arresters) {
        let at = place(used.at, voice);
        if let Some(model) = models.iter_mut().find(|model| *model.title == *arrester.title) {
            model.number += 1;
            model.places = format!("{}, {at}", model.places);
        } else {
            let tests = tests(arrester, voice);
            models.push(Arresters { number: 1, title: arrester.title.to_string(), tests, places: at });
        }
    }
    models
}

/// The same in one cell.
pub(super) fn arresters_in_words(run: &ResolvedRun<'_>, voice: Voice) -> String {
    let models = arresters(run, voice);
    let models: Vec<String> =
        models.iter().map(|model| format!("{}{}: {}", model.title, model.tests, model.places)).collect();
    if models.is_empty() { voice.say("none") } else { models.join("; ") }
}

pub(super) fn place(at: RunPlace, voice: Voice) -> String {
    match at {
        RunPlace::Radio => voice.say("at-the-radio"),
        RunPlace::Entry => voice.say("at-the-entry"),
        RunPlace::FarEnd => voice.say("at-the-far-end"),
    }
}

pub(super) fn way_up(orientation: Orientation, voice: Voice) -> String {
    match orientation {
        Orientation::Upright => voice.say("upright"),
        Orientation::Inverted => voice.say("inverted"),
    }
}

/// All parts of an end, in the order they are mounted.
pub(super) fn list(end: &EndSheet<'_>, voice: Voice) -> Vec<PartRow> {
    let own = end.resolved;
    let bracket = own.bracket;
    let mut parts = hung(own, voice);
    if let Some(bands) = bracket.bands {
        let tube = voice.given_in_both(&own.support.outside_diameter);
        parts.push(part(&bands, voice.say("part-band"), voice.with("part-band-detail", &[("tube", &tube)])));
    }
    if let Some(plate) = bracket.plate.as_ref().filter(|_| own.end.bracket.plate) {
        parts.push(part(&1, voice.say("part-plate"), plate.title.to_string()));
    }
    for run in &end.runs {
        of_run(run, voice, &mut parts);
    }
    grounding(end, voice, &mut parts);
    for fibre in &end.fibre_runs {
        of_fibre(fibre, voice, &mut parts);
    }
    let arresters: usize = end.runs.iter().map(|run| run.resolved.arresters.len()).sum();
    if arresters > 0 {
        parts.push(part(&arresters, voice.say("part-bonding-lead"), voice.say("part-bonding-lead-detail")));
    }
    for port in open_ports(end) {
        parts.push(part(&1, voice.say("part-blank"), voice.with("part-blank-detail", &[("port", &port)])));
    }
    parts
}

/// What hangs on the pole.
fn hung(own: &ResolvedEnd<'_>, voice: Voice) -> Vec<PartRow> {
    let mass = |mass: &Option<Given<Kilograms>>| {
        mass.as_ref().map(|mass| format!(", {}", voice.number(mass))).unwrap_or_default()
    };
    let (radio, antenna, bracket) = (own.radio, own.antenna, own.bracket);
    let radio_open: [(_, &dyn Display); 3] =
        [("title", &radio.title), ("half", &own.half.id), ("mass", &mass(&radio.mass))];
    let way_up = way_up(own.end.bracket.orientation, voice);
    let bracket_open: [(_, &dyn Display); 3] =
        [("title", &bracket.title), ("way-up", &way_up), ("mass", &mass(&bracket.mass))];
    let mut hung = vec![
        part(&1, voice.say("part-radio"), voice.with("part-radio-detail", &radio_open)),
        part(&1, voice.say("part-antenna"), format!("{}{}", antenna.title, mass(&antenna.mass))),
        part(&1, voice.say("part-bracket"), voice.with("part-bracket-detail", &bracket_open)),
    ];
    if let Some((feeder, used)) = own.feeder.zip(own.end.spec.feeder.as_ref()) {
        hung.push(part(&voice.given_in_both(&used.length), voice.say("part-feeder"), feeder.title.to_string()));
    }
    hung
}

/// The grounding conductor with what ends it.
fn grounding(end: &EndSheet<'_>, voice: Voice, parts: &mut Vec<PartRow>) {
    let (own, grounding) = (end.resolved, &end.resolved.end.grounding);
    let size = grounding.conductor.as_ref().map_or_else(|| voice.say("size-not-set"), |size| voice.number(size));
    let take = end.ground.to_take.get().map_or_else(|| voice.say("length-not-set"), |take| voice.in_both(take));
    let metal = voice.term(grounding.material.words());
    let detail = match &grounding.length {
        None => voice.with("part-conductor-detail", &[("metal", &metal), ("size", &size)]),
        Some(laid) => {
            let open: [(_, &dyn Display); 3] =
                [("metal", &metal), ("size", &size), ("length", &voice.given_in_both(laid))];
            voice.with("part-conductor-detail-laid", &open)
        }
    };
    parts.push(part(&take, voice.say("part-conductor"), detail));
    let at_radio = voice.with("part-lug-detail", &[("size", &size), ("terminal", &own.radio.ground.terminal)]);
    parts.push(part(&1, voice.say("part-lug"), at_radio));
    let bond = text_or(own.earth.map(|point| &point.spec.title), voice.say("earth-point-not-set"));
    let at_bond = voice.with("part-lug-or-clamp-detail", &[("size", &size), ("bond", &bond)]);
    parts.push(part(&1, voice.say("part-lug-or-clamp"), at_bond));
}

/// The ports that no cable closes.
pub(super) fn open_ports<'n>(end: &EndSheet<'n>) -> Vec<&'n str> {
    let own = end.resolved;
    let arrives = |id: &crate::spec::Id| end.arrivals.iter().any(|arrival| arrival.port.id == *id);
    let fibred = |id: &crate::spec::Id| own.fibre_runs.iter().any(|run| run.port.id == *id);
    let used = |id: &crate::spec::Id| arrives(id) || fibred(id) || own.runs.iter().any(|run| run.port.id == *id);
    own.radio.spec.ports.iter().map(|port| &port.id).filter(|id| !used(id)).map(|id| &**id).collect()
}

fn of_run(run: &RunSheet<'_>, voice: Voice, parts: &mut Vec<PartRow>) {
    let (resolved, cable) = (run.resolved, run.resolved.cable);
    let port = &resolved.port.id;
    let total = run.handling.to_take.get().map_or_else(|| voice.say("nothing"), |total| voice.in_both(total));
    let indoor = resolved.run.indoor.as_ref().map(|length| voice.given_in_both(length));
    let detail = voice.with(
        "part-cable-detail",
        &[
            ("title", &cable.title),
            ("screen", &cable.grade()),
            ("jacket", &voice.term(cable.jacket.word())),
            ("outdoor", &voice.given_in_both(&resolved.run.outdoor)),
            ("indoor", &text_or(indoor, voice.say("not-stated"))),
        ],
    );
    parts.push(part(&total, voice.with("part-cable", &[("port", port)]), detail));
    let shell = match (resolved.run.plugs, cable.screened()) {
        (Plugs::Plastic, _) | (_, Screening::UUtp) => "part-plug-plain",
        (Plugs::Metal, _) => "part-plug-metal",
    };
    let plugs = 2 * (1 + resolved.arresters.len());
    let shell = voice.with(shell, &[("diameter", &voice.line(&run.lines.outside_diameter))]);
    parts.push(part(&plugs, voice.say("part-plug"), shell));
    if let Ok(insert) = run.lines.gland.value() {
        let detail = voice.with("part-insert-detail", &[("insert", insert), ("port", port)]);
        parts.push(part(&1, voice.say("part-insert"), detail));
    }
    for arrester in arresters(resolved, voice) {
        let detail = format!("{}{}: {}", arrester.title, arrester.tests, arrester.places);
        parts.push(part(&arrester.number, voice.say("part-arrester"), detail));
    }
    if let Some(supply) = resolved.supply {
        parts.push(part(&1, voice.say("part-supply"), format!("{}, {}", supply.title, supply.standard.word())));
    }
}

/// A fibre and its two pluggables.
fn of_fibre(sheet: &FibreSheet<'_>, voice: Voice, parts: &mut Vec<PartRow>) {
    let (run, fibre) = (sheet.resolved.run, sheet.resolved.fibre);
    let length = voice.line_in_both(&sheet.lines.length);
    let detail = voice.with("part-fibre-detail", &[("title", &fibre.title), ("category", &fibre.category.word())]);
    parts.push(part(&length, voice.with("part-fibre", &[("port", &run.spec.port)]), detail));
    for (pluggable, key) in [(&run.spec.here, "part-pluggable-here"), (&run.spec.there, "part-pluggable-there")] {
        let detail = format!("{}, {}", pluggable.title, pluggable.interface.word());
        parts.push(part(&1, voice.with(key, &[("port", &run.spec.port)]), detail));
    }
}

/// Wrenches for the screws of bracket, antenna and support with the torques they must reach, and what else is not a part.
pub(super) fn tools(end: &EndSheet<'_>, voice: Voice) -> String {
    let own = end.resolved;
    let fasteners = || own.support.fasteners.iter().chain(&own.antenna.fasteners).chain(&own.bracket.fasteners);
    let mut sizes: Vec<(Millimetres, String)> = fasteners().filter_map(wrench).collect();
    sizes.sort_by(|(one, _), (other, _)| one.0.total_cmp(&other.0));
    sizes.dedup_by(|(one, _), (other, _)| one == other);
    let torques = fasteners().map(|fastener| fastener.torque.value);
    let least = torques.clone().min_by(|one, other| one.0.total_cmp(&other.0));
    let most = torques.max_by(|one, other| one.0.total_cmp(&other.0));
    let wrench = match (least, most) {
        (Some(least), Some(most)) if least == most => {
            voice.with("tool-wrench-for", &[("torque", &voice.number(least))])
        }
        (Some(least), Some(most)) => {
            voice.with("tool-wrench-range", &[("least", &voice.number(least)), ("most", &voice.number(most))])
        }
        _ => voice.say("tool-wrench"),
    };
    let wrench = if sizes.is_empty() {
        wrench
    } else {
        let sockets = sizes.into_iter().map(|(_, words)| words).collect::<Vec<_>>().join(", ");
        voice.with("tool-wrench-sockets", &[("wrench", &wrench), ("sockets", &shown(&sockets))])
    };
    let looked_at = match end.resolved.radio.aligned_by() {
        Some(AlignedBy::Voltage(readout)) => voice.with("tool-meter", &[("port", &readout.port)]),
        Some(AlignedBy::Level(shown)) => voice.with("tool-shown-level", &[("place", &shown.at)]),
        Some(AlignedBy::Indication(_)) | None => voice.say("tool-voltmeter"),
    };
    voice.with("tools", &[("wrench", &wrench), ("meter", &looked_at)])
}
