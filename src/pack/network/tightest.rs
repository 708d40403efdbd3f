//! What of a hop is closest to its limit: what is left as a share of what the limit allows.
//!
//! Quantities of several kinds are put in one order by that share. A limit in decibels has no nought to be a share of, so levels
//! below overload count as shares of 20 dB; common practice, no source.

use crate::sheet::{Direction, EndSheet, HopSheet, LONGEST_RUN, Line, RunSheet};
use crate::spec::Carried;
use crate::units::{Decibels, Quantity};
use crate::voice::{Open, Voice};

/// What a level below overload is a share of.
const LEVELS: Decibels = Decibels(20.0);

/// A quantity with what is left of it.
pub(super) struct Tight {
    pub what: String,
    pub left: String,
    share: f64,
}

/// All quantities of a hop that have a limit and a value.
struct Candidates {
    voice: Voice,
    list: Vec<Tight>,
}

impl Candidates {
    fn add<Q: Quantity>(&mut self, key: &str, open: &[Open<'_>], left: &Line<Q>, whole: f64) {
        let Some(value) = left.get() else { return };
        let share = if whole > 0.0 { value.base() / whole } else { value.base() };
        let what = self.voice.with(key, open);
        self.list.push(Tight { what, left: self.voice.line(left), share });
    }
}

/// The quantity of a hop that is closest to its limit or furthest beyond; none where nothing has both.
pub(super) fn of(sheet: &HopSheet<'_>, voice: Voice) -> Option<Tight> {
    let mut found = Candidates { voice, list: Vec::new() };
    let allowed = 100.0 - sheet.target.availability.value().0;
    found.add("tight-availability", &[], &sheet.service.in_hand, allowed);
    for direction in sheet.directions.iter() {
        of_direction(sheet, direction, &mut found);
    }
    let profile = &sheet.profile;
    if let (Some((asked, _)), Some(left)) = (profile.asked(), profile.lines.in_hand.get()) {
        let share = if asked.0 > 0.0 { left.0 / asked.0 } else { left.0 };
        found.list.push(Tight { what: voice.say("ask-clearance"), left: voice.number(left), share });
    }
    if let (Some((asked, _)), Some(left)) = (profile.asked_low(), profile.lines.low_in_hand.get()) {
        let share = if asked.0 > 0.0 { left.0 / asked.0 } else { left.0 };
        found.list.push(Tight { what: voice.say("ask-clearance-low"), left: voice.number(left), share });
    }
    for end in sheet.ends.iter() {
        of_end(end, &mut found);
    }
    found.list.into_iter().min_by(|one, other| one.share.total_cmp(&other.share))
}

fn of_direction(sheet: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Candidates) {
    let (margins, levels) = (&direction.margins, &direction.levels);
    let way = found.voice.term(direction.way.words());
    let open: [Open<'_>; 1] = [("way", &way)];
    if let Some(wanted) = &sheet.target.fade_margin {
        found.add("ask-fade-margin", &open, &margins.fade_in_hand, wanted.value().0);
    }
    if let Some(most) = &sheet.target.errored {
        found.add("ask-errored", &open, &margins.errored_in_hand, most.value().0);
    }
    found.add("ask-overload", &open, &margins.overload_in_hand, LEVELS.0);
    found.add("ask-up-fade", &open, &levels.up_fade_in_hand, LEVELS.0);
    if direction.heard.interference.get().is_some() {
        let limit = sheet.heard[direction.way].limit.value().0;
        found.add("ask-degradation", &open, &direction.heard.degradation_in_hand, limit);
    }
}

fn of_end(end: &EndSheet<'_>, found: &mut Candidates) {
    let lines = &end.lines;
    let half = lines.tilt_least.get().zip(lines.tilt_most.get()).map_or(0.0, |(least, most)| (most.0 - least.0) / 2.0);
    found.add("ask-tilt", &[("end", &end.name)], &lines.tilt_in_hand, half);
    for run in &end.runs {
        of_run(end, run, found);
    }
    let given = &end.resolved.end.grounding.conductor;
    // A conductor as thick as the code asks for is as it should be; only a thinner one is beyond a limit.
    let thin = end.ground.needed.get().zip(given.as_ref()).filter(|(needed, given)| given.value < *needed);
    if let Some((needed, given)) = thin {
        let voice = found.voice;
        let what = voice.with("ask-ground", &[("end", &end.name)]);
        let left = voice.number(given.value - needed);
        found.list.push(Tight { what, left, share: (given.value - needed).0 / needed.0 });
    }
}

fn of_run(end: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Candidates) {
    let place: [Open<'_>; 2] = [("end", &end.name), ("port", &run.resolved.port.id)];
    if run.carries(Carried::Power) {
        found.add("ask-voltage", &place, &run.lines.voltage_in_hand, end.resolved.radio.power.voltage.min.value.0);
    }
    if run.carries(Carried::Data) {
        found.add("ask-length", &place, &run.lines.length_in_hand, LONGEST_RUN.0);
    }
}
