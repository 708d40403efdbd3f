//! The table a hop is decided by: requirement, limit, what was computed, what is left, and whether it is met.

use super::phrases::least_conductor_as_written;
use super::words::{Table, sentence, text_or};
use crate::sheet::{Direction, EndSheet, HopSheet, LONGEST_RUN, Line, RunSheet, Shown};
use crate::spec::{Carried, Directions, Period};
use crate::units::Quantity;
use crate::voice::{Open, Voice};

/// The table while it grows.
struct Requirements {
    voice: Voice,
    table: Table,
}

impl Requirements {
    /// A requirement that two lines of the sheet speak of; it is met by the sign of what is left, in full precision.
    fn judged<T: Shown, Q: Quantity>(&mut self, what: String, limit: String, computed: &Line<T>, in_hand: &Line<Q>) {
        let (computed, left) = (self.voice.line(computed), self.voice.line(in_hand));
        self.row(what, limit, computed, left, in_hand.get().map(|left| left.base() >= 0.0));
    }

    fn row(&mut self, what: String, limit: String, computed: String, left: String, met: Option<bool>) {
        let state = match met {
            Some(true) => "met",
            Some(false) => "not-met",
            None => "not-evaluated",
        };
        self.table.row([what, limit, computed, left, self.voice.say(state)]);
    }

    fn at_least(&self, limit: impl std::fmt::Display) -> String {
        format!("≥ {}", self.voice.number(limit))
    }

    fn at_most(&self, limit: impl std::fmt::Display) -> String {
        format!("≤ {}", self.voice.number(limit))
    }
}

/// All requirements of a hop, one a row.
pub(super) fn table(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    let head = ["requirement", "limit", "computed", "in-hand", "state"];
    let mut asked = Requirements { voice, table: Table::new(voice, head) };
    of_availability(sheet, &mut asked);
    for direction in sheet.directions.iter() {
        of_direction(sheet, direction, &mut asked);
    }
    of_path(sheet, &mut asked);
    for end in sheet.ends.iter() {
        of_end(end, &mut asked);
    }
    asked.table
}

/// The availability with what its tolerances make of it, and how much of the allowed outage is left.
fn of_availability(sheet: &HopSheet<'_>, asked: &mut Requirements) {
    let (voice, target, service) = (asked.voice, &sheet.target, &sheet.service);
    let directions = voice.say(match target.directions() {
        Directions::Together => "directions-together",
        Directions::Each => "worse-direction",
    });
    let period = voice.say(match target.period() {
        Period::AverageYear => "average-year",
        Period::WorstMonth => "worst-month",
    });
    let name = sentence(&voice.term(sheet.directions.a.availability_words()));
    let capacity = voice.number(&target.capacity.given);
    let open: [Open<'_>; 4] =
        [("name", &name), ("directions", &directions), ("period", &period), ("capacity", &capacity)];
    let what = voice.with("ask-availability", &open);
    let limit = asked.at_least(&target.availability.given);
    let left = match service.unused.get().filter(|part| part.0.0 >= 0.0) {
        Some(part) => {
            let open: [Open<'_>; 2] = [("left", &voice.line(&service.in_hand)), ("part", &voice.number(part))];
            voice.with("availability-left", &open)
        }
        None => voice.line(&service.in_hand),
    };
    let met = service.in_hand.get().map(|left| left.0 >= 0.0);
    asked.row(what, limit.clone(), voice.line(&service.counted), left, met);
    if let (Some(left), Some(true)) = (service.left_at_worst.get(), met) {
        let state = voice.say(if left.0 < 0.0 { "tight" } else { "met" });
        let computed = voice.line(&service.counted_least);
        asked.table.row([voice.say("ask-availability-worst"), limit, computed, voice.number(left), state]);
    }
}

fn of_path(sheet: &HopSheet<'_>, asked: &mut Requirements) {
    let (voice, profile, lines) = (asked.voice, &sheet.profile, &sheet.profile.lines);
    let median = (voice.say("ask-clearance"), profile.asked(), &lines.fraction, &lines.in_hand);
    let low = (voice.say("ask-clearance-low"), profile.asked_low(), &lines.low_fraction, &lines.low_in_hand);
    for (what, wanted, fraction, left) in [median, low] {
        let computed = text_or(fraction.get().map(|fraction| voice.number(fraction)), voice.say("not-shown"));
        let limit = text_or(wanted.map(|(radii, _)| asked.at_least(radii)), voice.say("nothing"));
        let met = left.get().map(|left| left.0 >= 0.0);
        let left = text_or(left.get().map(|left| voice.number(left)), voice.say("nothing"));
        asked.row(what, limit, computed, left, met);
    }
}

fn of_direction(sheet: &HopSheet<'_>, direction: &Direction<'_>, asked: &mut Requirements) {
    let (voice, margins) = (asked.voice, &direction.margins);
    let way = voice.term(direction.way.words());
    if let Some(wanted) = &sheet.target.fade_margin {
        let limit = asked.at_least(&wanted.given);
        let what = voice.with("ask-fade-margin", &[("way", &way)]);
        asked.judged(what, limit, &margins.fade_margin, &margins.fade_in_hand);
    }
    if let Some(most) = &sheet.target.errored {
        let limit = asked.at_most(&most.given);
        let what = voice.with("ask-errored", &[("way", &way)]);
        asked.judged(what, limit, &margins.errored, &margins.errored_in_hand);
    }
    let limit = asked.at_most(&direction.receiver.radio.overload);
    let what = voice.with("ask-overload", &[("way", &way)]);
    asked.judged(what, limit, &direction.lines.level, &margins.overload_in_hand);
    let levels = &direction.levels;
    if levels.up_fade_level.get().is_some() {
        let limit = asked.at_most(&direction.receiver.radio.overload);
        let what = voice.with("ask-up-fade", &[("way", &way)]);
        asked.judged(what, limit, &levels.up_fade_level, &levels.up_fade_in_hand);
    }
    if direction.heard.interference.get().is_some() {
        let limit = asked.at_most(&sheet.heard[direction.way].limit.given);
        let what = voice.with("ask-degradation", &[("way", &way)]);
        asked.judged(what, limit, &direction.heard.degradation, &direction.heard.degradation_in_hand);
    }
}

fn of_end(end: &EndSheet<'_>, asked: &mut Requirements) {
    let (voice, lines) = (asked.voice, &end.lines);
    let reach = voice.range(&voice.line(&lines.tilt_least), &voice.line(&lines.tilt_most));
    asked.judged(voice.with("ask-tilt", &[("end", &end.name)]), reach, &lines.tilt, &lines.tilt_in_hand);
    for run in &end.runs {
        of_run(end, run, asked);
    }
    let given = &end.resolved.end.grounding.conductor;
    let met = end.ground.needed.get().zip(given.as_ref()).map(|(needed, given)| given.value >= needed);
    let given = text_or(given.as_ref().map(|given| voice.number(given)), voice.say("not-stated"));
    let limit = format!("≥ {}", least_conductor_as_written(end, voice));
    asked.row(voice.with("ask-ground", &[("end", &end.name)]), limit, given, voice.say("nothing"), met);
}

fn of_run(end: &EndSheet<'_>, run: &RunSheet<'_>, asked: &mut Requirements) {
    let (voice, lines) = (asked.voice, &run.lines);
    let place: [Open<'_>; 2] = [("end", &end.name), ("port", &run.resolved.port.id)];
    if run.carries(Carried::Power) {
        let least = voice.number(&end.resolved.radio.power.voltage.min);
        let reserve = voice.number(&end.voltage_reserve.given);
        let limit = voice.with("ask-voltage-limit", &[("least", &least), ("reserve", &reserve)]);
        asked.judged(voice.with("ask-voltage", &place), limit, &lines.radio_voltage, &lines.voltage_in_hand);
    }
    if run.carries(Carried::Data) {
        let limit = asked.at_most(LONGEST_RUN);
        asked.judged(voice.with("ask-length", &place), limit, &lines.length, &lines.length_in_hand);
    }
}
