//! The work at one end, step by step: one action each, with the safety message that concerns it directly before.

use serde::Serialize;

use super::cautions::{Caution, Hazard};
use super::licence;
use super::lightning;
use super::parts::{open_ports, place, way_up};
use super::words::text_or;
use crate::sheet::{Arrival, EndSheet, FibreSheet, HopSheet, RunSheet, Saying, wrench};
use crate::spec::{AlignedBy, Carried, Construction, Entry, Fastener, Radio, RunPlace};
use crate::units::Millimetres;
use crate::voice::{Open, Voice};

/// Something to do, or something to know before doing it.
#[derive(Debug, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub(super) enum Item {
    /// One action, with a box to tick.
    Step {
        /// An imperative sentence, and what comes of it.
        text: String,
    },
    /// A safety message for the step that follows.
    Caution(Caution),
    /// Something that somebody may want to see before it is covered or changed; the work goes on if nobody comes.
    Witness {
        /// What there is to see.
        text: String,
    },
}

/// A list of steps that grows.
struct Steps {
    voice: Voice,
    items: Vec<Item>,
}

impl Steps {
    const fn new(voice: Voice) -> Self {
        Self { voice, items: Vec::new() }
    }

    fn step(&mut self, key: &str) {
        self.step_with(key, &[]);
    }

    fn step_with(&mut self, key: &str, open: &[Open<'_>]) {
        self.items.push(Item::Step { text: self.voice.with(key, open) });
    }

    fn beware(&mut self, hazard: Hazard) {
        self.items.push(Item::Caution(hazard.caution(self.voice)));
    }

    /// A witness point. Where one stands is common practice, no source.
    fn witness(&mut self, key: &str) {
        self.items.push(Item::Witness { text: self.voice.say(key) });
    }
}

/// From the bare support to an antenna that points roughly right.
pub(super) fn mounting(sheet: &HopSheet<'_>, end: &EndSheet<'_>, voice: Voice) -> Vec<Item> {
    let (own, lines) = (end.resolved, &end.lines);
    let (support, bracket) = (own.support, own.bracket);
    let mut steps = Steps::new(voice);
    let tube = voice.given_in_both(&support.outside_diameter);
    let kind = voice.term(support.kind.word());
    steps.step_with("step-tube", &[("support", &support.id), ("kind", &kind), ("diameter", &tube)]);
    for screw in &support.fasteners {
        tighten("step-torque-support", screw, &mut steps);
    }
    steps.step("step-landmark");
    steps.step("step-look");
    if let Some(plate) = bracket.plate.as_ref().filter(|_| own.end.bracket.plate) {
        steps.step_with("step-plate", &[("plate", &plate.title)]);
    }
    steps.step_with("step-bracket-way-up", &[("way-up", &way_up(own.end.bracket.orientation, voice))]);
    if bracket.fine_azimuth.is_some() {
        steps.step("step-fine-azimuth");
    }
    let polarisation = voice.term(sheet.resolved.hop.channel.polarisation.word());
    steps.step_with("step-polarisation", &[("polarisation", &polarisation)]);
    for screw in &own.antenna.fasteners {
        tighten("step-torque", screw, &mut steps);
    }
    steps.beware(Hazard::Load);
    lift(end, &mut steps);
    steps.beware(Hazard::Height);
    steps.step_with("step-clamp", &[("height", &voice.given_in_both(&own.end.height))]);
    steps.step("step-hang");
    steps.step_with("step-tilt", &[("tilt", &tilt(end, voice))]);
    steps.step_with("step-bearing", &[("bearing", &voice.line(&lines.true_bearing))]);
    steps.step("step-nip");
    steps.items
}

/// What is to be lifted, before it is.
fn lift(end: &EndSheet<'_>, steps: &mut Steps) {
    match end.lines.lift_mass.get() {
        Some(mass) => steps.step_with("step-lift", &[("mass", &steps.voice.in_both(mass))]),
        None => steps.step("step-lift-unstated"),
    }
}

/// Screws with their thread, class, wrench and torque.
fn tighten(key: &'static str, screw: &Fastener, steps: &mut Steps) {
    let voice = steps.voice;
    let mut thread = screw.thread.to_string();
    if let Some(class) = screw.class {
        thread = format!("{thread}, {}", class.word());
    }
    if let Some((_, size)) = wrench(screw) {
        thread = voice.with("screw-wrench", &[("thread", &thread), ("size", &voice.number(size))]);
    }
    let torque = voice.given_in_both(&screw.torque);
    let open: [Open<'_>; 4] =
        [("screws", &screw.title), ("number", &screw.count), ("thread", &thread), ("torque", &torque)];
    steps.step_with(key, &open);
}

/// The tilt with the word a crew needs.
pub(super) fn tilt(end: &EndSheet<'_>, voice: Voice) -> String {
    let said = voice.line(&end.lines.tilt);
    match end.lines.tilt.get() {
        Some(tilt) if tilt.0 > 0.0 => voice.with("tilt-up", &[("tilt", &said)]),
        Some(tilt) if tilt.0 < 0.0 => voice.with("tilt-down", &[("tilt", &said)]),
        _ => said,
    }
}

/// Grounding, then each run from the radio to what feeds it.
pub(super) fn cabling(end: &EndSheet<'_>, voice: Voice) -> Vec<Item> {
    let own = end.resolved;
    let mut steps = Steps::new(voice);
    steps.beware(Hazard::Weather);
    if own.earth.is_none_or(|earth| earth.bonded.is_none()) {
        steps.step("step-earth-bonded");
    }
    steps.items.extend(lightning::step(end, voice).map(|text| Item::Step { text }));
    let bond = text_or(own.earth.map(|point| &point.spec.title), voice.say("step-earth-ask"));
    steps.step_with("step-bond", &[("bond", &bond)]);
    let terminal = &own.radio.ground;
    let curve = voice.given_in_both(&end.practice.ground_bend.given);
    match &terminal.torque {
        None => steps.step_with("step-lead", &[("bend", &curve), ("terminal", &terminal.terminal)]),
        Some(torque) => {
            let torque = voice.given_in_both(torque);
            let open: [Open<'_>; 3] = [("bend", &curve), ("terminal", &terminal.terminal), ("torque", &torque)];
            steps.step_with("step-lead-torque", &open);
        }
    }
    for (number, run) in end.runs.iter().enumerate() {
        pull(run, &mut steps);
        if number == 0 {
            steps.witness("witness-bond");
        }
        close(run, &mut steps);
    }
    for fibre in &end.fibre_runs {
        lay(fibre, &mut steps);
    }
    let free = open_ports(end);
    for port in free {
        let key = if own.radio.reads_out_at(port) { "step-leave-free" } else { "step-blank" };
        steps.step_with(key, &[("port", &port)]);
    }
    for run in &end.runs {
        energise(run, own.radio, &mut steps);
    }
    for arrival in &end.arrivals {
        connect(arrival, own.radio, &mut steps);
    }
    if let Some(button) = &own.radio.erase_button {
        let held = voice.number(&button.held);
        let open: [Open<'_>; 3] = [("button", &button.title), ("held", &held), ("erases", &button.erases)];
        steps.step_with("step-erase-button", &open);
    }
    steps.items
}

/// A cable from the radio to where it goes.
fn pull(run: &RunSheet<'_>, steps: &mut Steps) {
    let voice = steps.voice;
    let pulling = voice.line_in_both(&run.handling.pulling_radius);
    let fixed = voice.line_in_both(&run.handling.bend_radius);
    let (cable, port, to) = (&run.resolved.cable.title, &run.resolved.port.id, to_where(run, voice));
    let open: [Open<'_>; 5] = [("cable", cable), ("port", port), ("to", &to), ("pulling", &pulling), ("fixed", &fixed)];
    steps.step_with("step-pull", &open);
}

/// The same cable sealed, bonded and tested.
fn close(run: &RunSheet<'_>, steps: &mut Steps) {
    let voice = steps.voice;
    let (resolved, port) = (run.resolved, &run.resolved.port.id);
    if let Ok(insert) = run.lines.gland.value() {
        let by_hand =
            resolved.port.glands.iter().any(|gland| Saying::name(&gland.title) == *insert && gland.hand_tight);
        let key = if by_hand { "step-insert-by-hand" } else { "step-insert" };
        steps.step_with(key, &[("port", port), ("insert", insert)]);
    }
    let depth = run.handling.drip_loop.value();
    let depth = depth.map_or_else(|_| voice.say("nothing"), |depth| voice.given_in_both(depth));
    steps.step_with("step-drip-loop", &[("depth", &depth), ("port", port)]);
    for (arrester, used) in resolved.arresters.iter().zip(&resolved.run.arresters) {
        let at = match (used.at, &run.onward) {
            (RunPlace::Entry, Some(_)) => place(RunPlace::FarEnd, voice),
            (at, _) => place(at, voice),
        };
        steps.step_with("step-arrester", &[("arrester", &arrester.title), ("at", &at)]);
    }
    if resolved.cable.has_screen() {
        let bonded = voice.term(resolved.run.screen.words());
        match resolved.entry_earth {
            None => steps.step_with("step-screen", &[("port", port), ("bonded", &bonded)]),
            Some(earth) => {
                let open: [Open<'_>; 3] = [("port", port), ("bonded", &bonded), ("earth", &earth.spec.title)];
                steps.step_with("step-screen-entry", &open);
            }
        }
    }
    let test = match resolved.cable.construction {
        Construction::FourPair => "step-test",
        Construction::TwoCore => "step-test-cores",
    };
    steps.step_with(test, &[("port", port)]);
    if let Some(switch) = &resolved.run.spec.switch {
        let open: [Open<'_>; 3] = [("port", port), ("switch", &switch.title), ("socket", &switch.port)];
        steps.step_with("step-switch", &open);
    }
}

/// A fibre from the radio to where it goes: no metal on it is no danger, light in it is one to eyes.
fn lay(sheet: &FibreSheet<'_>, steps: &mut Steps) {
    let voice = steps.voice;
    let (run, fibre) = (sheet.resolved.run.spec, sheet.resolved.fibre);
    let bend = fibre.bend_radius.as_ref().map_or_else(
        || voice.in_both(Millimetres(TIMES_DIAMETER * fibre.outside_diameter.value.0)),
        |given| voice.given_in_both(given),
    );
    steps.step_with("step-fibre-pull", &[("fibre", &fibre.title), ("port", &run.port), ("bend", &bend)]);
    if !fibre.metal_free {
        steps.step_with("step-fibre-metal", &[("port", &run.port)]);
    }
    let open: [Open<'_>; 3] =
        [("here", &run.here.interface.word()), ("there", &run.there.interface.word()), ("port", &run.port)];
    steps.step_with("step-fibre-plug", &open);
    if let Some(switch) = &run.switch {
        let open: [Open<'_>; 3] = [("port", &run.port), ("switch", &switch.title), ("socket", &switch.port)];
        steps.step_with("step-switch", &open);
    }
    steps.step_with("step-fibre-test", &[("port", &run.port), ("loss", &voice.line(&sheet.lines.most_loss))]);
}

/// Least bend radius of a fibre whose sheet states none, in diameters: ANSI/TIA-568.3-D, from memory.
const TIMES_DIAMETER: f64 = 10.0;

/// Where a cable goes from the radio.
fn to_where(run: &RunSheet<'_>, voice: Voice) -> String {
    if let Some(far) = run.resolved.ends_at {
        return voice.with("step-pull-to-radio", &[("port", &far.port.id), ("hop", &far.hop.id), ("end", &far.end)]);
    }
    match (&run.onward, run.resolved.run.enters()) {
        (Some(onward), _) => voice.with("step-pull-to-device", &[("device", &voice.line(&onward.feeds))]),
        (None, Entry::Building) => voice.say("step-pull-to-building"),
        (None, Entry::Cabinet) => voice.say("step-pull-to-cabinet"),
        (None, Entry::None) => voice.say("step-pull-to-far-end"),
    }
}

/// Power last, when every cable is in its place.
fn energise(run: &RunSheet<'_>, radio: &Radio, steps: &mut Steps) {
    let voice = steps.voice;
    let (resolved, port) = (run.resolved, &run.resolved.port.id);
    if let (Some(supply), true) = (resolved.supply, run.carries(Carried::Power)) {
        steps.beware(Hazard::Electricity);
        if let Some(cores) = &resolved.run.spec.cores {
            let open: [Open<'_>; 3] = [("port", port), ("positive", &cores.positive), ("negative", &cores.negative)];
            steps.step_with("step-cores", &open);
        }
        if let Some(fuse) = &resolved.run.spec.fuse {
            let (rated, pole) = (voice.number(&fuse.rated), voice.term(fuse.pole.word()));
            steps.step_with("step-fuse", &[("port", port), ("rated", &rated), ("pole", &pole)]);
        }
        if let Some(wiring) = supply.wiring {
            let wiring = voice.term(wiring.word());
            steps.step_with("step-wiring", &[("supply", &supply.title), ("wiring", &wiring)]);
        }
        let at = text_or(resolved.power_point.map(|point| point.title.clone()), voice.say("place-not-set"));
        sends_at_once(radio, steps);
        let connect = if resolved.run.spec.fuse.is_some() { "step-connect-fuse" } else { "step-connect" };
        steps.step_with(connect, &[("port", port), ("supply", &supply.title), ("at", &at)]);
        if let Some(time) = &radio.start_up_time {
            steps.step_with("step-starts", &[("time", &voice.number(time))]);
        }
        steps.step_with("step-voltage", &[("voltage", &voice.line(&run.lines.radio_voltage))]);
    }
}

/// A run that another end's pack lists, and what it brings.
fn connect(arrival: &Arrival<'_>, radio: &Radio, steps: &mut Steps) {
    let voice = steps.voice;
    let from = arrival.from.fellow;
    let run = &from.end.runs[arrival.from.run];
    let open: [Open<'_>; 4] =
        [("port", &arrival.port.id), ("from", &run.port.id), ("hop", &from.hop.hop.id), ("end", &from.end.name)];
    if !arrival.brings(Carried::Power) {
        steps.step_with("step-arrival", &open);
        return;
    }
    steps.beware(Hazard::Electricity);
    sends_at_once(radio, steps);
    steps.step_with("step-arrival-power", &open);
    if let Some(time) = &radio.start_up_time {
        steps.step_with("step-starts", &[("time", &voice.number(time))]);
    }
    steps.step_with("step-voltage", &[("voltage", &voice.line(&arrival.lines.voltage))]);
}

/// A radio that sends by itself is told of before it gets power.
fn sends_at_once(radio: &Radio, steps: &mut Steps) {
    if radio.may_send_at_power_on() {
        steps.beware(Hazard::Radiation);
        steps.step("step-sends-at-once");
    }
}

/// What holds the level by itself hides the peak.
fn power_control_off(end: &EndSheet<'_>) -> &'static str {
    let has = |radio: &Radio| radio.automatic_power_control.unwrap_or(true);
    match (has(end.resolved.radio), has(end.far.radio)) {
        (true, true) => "step-control-both",
        (true, false) => "step-control-here",
        (false, true) => "step-control-there",
        (false, false) => "step-control-neither",
    }
}

/// Bandwidth and modulation, which for radios of two models may go by two names.
fn bandwidth(sheet: &HopSheet<'_>, end: &EndSheet<'_>, steps: &mut Steps) {
    let voice = steps.voice;
    let bandwidth = voice.number(&sheet.resolved.hop.channel.bandwidth);
    let here = voice.line(&sheet.directions[end.name.outgoing()].levels.aligns_in);
    let there = voice.line(&end.lines.align_state);
    if here == there {
        steps.step_with("step-bandwidth", &[("bandwidth", &bandwidth), ("state", &here)]);
    } else {
        let open: [Open<'_>; 3] = [("bandwidth", &bandwidth), ("here", &here), ("there", &there)];
        steps.step_with("step-bandwidth-apart", &open);
    }
}

/// From two powered ends to a signal on the meter.
pub(super) fn preparation(sheet: &HopSheet<'_>, end: &EndSheet<'_>, voice: Voice) -> Vec<Item> {
    let own = end.resolved;
    let mut steps = Steps::new(voice);
    steps.step("step-call");
    bandwidth(sheet, end, &mut steps);
    steps.step(power_control_off(end));
    let (here, there) = (voice.number(&own.end.transmit_power), voice.number(&end.far.end.transmit_power));
    steps.step_with("step-power", &[("here", &here), ("there", &there)]);
    let ceiling = licence::ceiling(&sheet.licence[end.name.outgoing()], &end.people, voice);
    steps.items.extend(ceiling.map(|text| Item::Step { text }));
    match &own.radio.readout {
        Some(readout) => steps.step_with("step-covers", &[("port", &readout.port)]),
        None => steps.step("step-covers-only"),
    }
    steps.beware(Hazard::Radiation);
    steps.step("step-transmit");
    if let Some(mode) = &own.radio.alignment_mode {
        steps.step_with("step-alignment-mode", &[("enter", &mode.enter)]);
    }
    watch(own.radio, &mut steps);
    steps.items
}

/// What shows the level, and how slowly.
fn watch(radio: &Radio, steps: &mut Steps) {
    let Some(by) = radio.aligned_by() else { return };
    match by {
        AlignedBy::Voltage(readout) => steps.step_with("step-meter", &[("port", &readout.port)]),
        AlignedBy::Level(shown) => steps.step_with("step-shown-level", &[("place", &shown.at)]),
        AlignedBy::Indication(indication) => {
            let open: [Open<'_>; 2] = [("title", &indication.title), ("stronger", &indication.stronger)];
            steps.step_with("step-indication", &open);
        }
    }
    if let Some(lag) = by.lag() {
        steps.step_with("step-lag", &[("lag", &steps.voice.number(lag))]);
    }
}

/// From a signal on the meter to a locked and recorded antenna.
pub(super) fn alignment(end: &EndSheet<'_>, voice: Voice) -> Vec<Item> {
    let own = end.resolved;
    let mut steps = Steps::new(voice);
    // How far to sweep so that the beam shows between its side lobes.
    match end.dish.lobes.sweep.get() {
        Some(angle) => steps.step_with("step-sweep", &[("angle", &voice.number(angle))]),
        None => steps.step("step-sweep-past"),
    }
    steps.step("step-sweep-tilt");
    steps.step("step-peak");
    steps.step("step-compare");
    for screw in &own.bracket.fasteners {
        tighten("step-torque", screw, &mut steps);
    }
    if own.bracket.fasteners.is_empty() {
        steps.step("step-torque-maker");
    }
    steps.witness("witness-reading");
    steps.step("step-again");
    steps.step("step-restore");
    if let Some(mode) = &own.radio.alignment_mode {
        steps.step_with("step-alignment-mode-off", &[("leave", &mode.leave)]);
    }
    if let Some(readout) = &own.radio.readout {
        steps.step_with("step-meter-off", &[("port", &readout.port)]);
    }
    steps.items
}
