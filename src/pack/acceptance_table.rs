//! The table of an acceptance record: key, item, as designed, tolerance, as built, within.

use super::licence;
use super::phrases::least_conductor_as_written;
use super::steps;
use super::words::{Table, text_or};
use crate::sheet::{EndSheet, HopSheet, Line, RecordSheet};
use crate::spec::{Carried, Reading, TestResult};
use crate::units::{Decibels, Quantity};
use crate::voice::Voice;

/// The table, a row at a time.
struct Rows {
    voice: Voice,
    table: Table,
}

impl Rows {
    /// A row with a tolerance; the sheet says whether it is kept.
    fn judged(
        &mut self,
        key: &str,
        item: String,
        designed: String,
        tolerance: String,
        (built, kept): (Option<String>, Option<bool>),
    ) {
        let within = match (&built, kept) {
            (_, Some(true)) => "within-yes",
            (_, Some(false)) => "within-no",
            (Some(_), None) => "within-not-judged",
            (None, None) => "within-missing",
        };
        let built = self.written(built);
        self.table.row([key.into(), item, designed, tolerance, built, self.voice.say(within)]);
        if kept == Some(false) {
            self.table.broken.push(self.table.rows.len() - 1);
        }
    }

    /// A row that is only noted, or missing where nothing was written.
    fn noted(&mut self, key: &str, item: &str, designed: String, built: Option<String>) {
        let noted = self.voice.say(if built.is_some() { "within-noted" } else { "within-missing" });
        let (item, built) = (self.voice.say(item), self.written(built));
        self.table.row([key.into(), item, designed, String::new(), built, noted]);
    }

    /// A row that goes with the one it stands by.
    fn beside(&mut self, key: &str, item: &str, designed: String, built: String) {
        self.table.row([key.into(), self.voice.say(item), designed, String::new(), built, String::new()]);
    }

    /// What a crew wrote, or that it wrote nothing.
    fn written(&self, words: Option<impl std::fmt::Display>) -> String {
        text_or(words, self.voice.say("not-written"))
    }

    /// A quantity that a crew wrote.
    fn quantity(&self, quantity: Option<impl std::fmt::Display>) -> Option<String> {
        quantity.map(|quantity| self.voice.number(quantity))
    }

    /// A line as it was found, without the reason why there is none.
    fn found<Q: Quantity>(&self, line: &Line<Q>) -> Option<String> {
        self.quantity(line.get())
    }

    fn either_way(&self, limit: &impl std::fmt::Display) -> String {
        format!("± {}", self.voice.number(limit))
    }

    fn or_more(&self, least: &str) -> String {
        self.voice.with("or-more", &[("least", &least)])
    }
}

pub(super) fn table(sheet: &HopSheet<'_>, found: &RecordSheet<'_>, end: &EndSheet<'_>, voice: Voice) -> Table {
    let head = ["key", "item", "as-designed", "tolerance", "as-built", "within"];
    let mut rows = Rows { voice, table: Table::new(voice, head) };
    levels(sheet, found, end, &mut rows);
    settings(sheet, found, end, &mut rows);
    mounting(sheet, found, end, &mut rows);
    runs(found, end, &mut rows);
    grounding(found, end, &mut rows);
    service(sheet, found, &mut rows);
    rows.table
}

fn levels(sheet: &HopSheet<'_>, found: &RecordSheet<'_>, end: &EndSheet<'_>, rows: &mut Rows) {
    let (record, lines, limits, voice) = (found.document, &found.lines, &found.limits, rows.voice);
    let read = |reading: &Reading| {
        let meter = reading.meter.as_ref().map(|meter| voice.number(meter));
        let both = [meter, reading.level.as_ref().map(|level| voice.number(level))];
        let both: Vec<String> = both.into_iter().flatten().collect();
        text_or((!both.is_empty()).then(|| both.join(", ")), voice.say("not-written"))
    };
    rows.beside("", "built-predicted", voice.line(&end.lines.target_level), String::new());
    let accepted = voice.band(&lines.expected_least, &lines.expected_most);
    let window = format!("{} ({accepted})", rows.either_way(&limits.window.given));
    let expected = voice.with("that-day", &[("level", &voice.line(&lines.expected))]);
    let measured = (rows.found(&lines.measured), found.in_window());
    rows.judged("after_locking", voice.say("built-level-after"), expected, window, measured);
    let after = read(&record.after_locking);
    rows.beside("after_locking", "built-reading-after", voice.line(&lines.expected_voltage), after);
    rows.beside("before_locking", "built-reading-before", String::new(), read(&record.before_locking));
    let moved = (rows.found(&lines.moved), found.stayed());
    let tolerance = rows.either_way(&limits.locking.given);
    rows.judged("", voice.say("built-moved"), voice.say("none"), tolerance, moved);
    let gap = sheet.disagreement();
    let agrees = gap.map(|gap: Decibels| gap.tidy() <= limits.reciprocity.value());
    let apart = Some(text_or(gap.map(|gap| voice.number(gap)), voice.say("no-reading-there")));
    let reciprocity = rows.either_way(&limits.reciprocity.given);
    rows.judged("", voice.say("built-disagreement"), voice.say("none"), reciprocity, (apart, agrees));
}

fn settings(sheet: &HopSheet<'_>, found: &RecordSheet<'_>, end: &EndSheet<'_>, rows: &mut Rows) {
    let (set, channel, voice) = (&found.document.settings, &sheet.resolved.hop.channel, rows.voice);
    let [power, width, polarisation] = found.as_set(sheet.resolved);
    let same = || voice.say("same-as-designed");
    let designed = voice.number(&end.resolved.end.transmit_power);
    let set_power = (rows.quantity(set.transmit_power.as_ref()), power);
    rows.judged("settings.transmit_power", voice.say("record-power"), designed, same(), set_power);
    let set_width = (rows.quantity(set.bandwidth.as_ref()), width);
    let designed = voice.number(&channel.bandwidth);
    rows.judged("settings.bandwidth", voice.say("record-bandwidth"), designed, same(), set_width);
    let mounted = (set.polarisation.map(|set| voice.term(set.word())), polarisation);
    let designed = voice.term(channel.polarisation.word());
    rows.judged("settings.polarisation", voice.say("record-polarisation"), designed, same(), mounted);
}

fn mounting(sheet: &HopSheet<'_>, found: &RecordSheet<'_>, end: &EndSheet<'_>, rows: &mut Rows) {
    let (record, lines, voice) = (found.document, &end.lines, rows.voice);
    let [bearing_holds, tilt_holds, height_holds] = found.as_mounted();
    let limits = &found.limits;
    let bearing = (rows.quantity(record.bearing.as_ref()), bearing_holds);
    let (designed, tolerance) = (voice.line(&lines.true_bearing), rows.either_way(&limits.bearing.given));
    rows.judged("bearing", voice.say("built-bearing"), designed, tolerance, bearing);
    let (tilt, tolerance) = ((rows.quantity(record.tilt.as_ref()), tilt_holds), rows.either_way(&limits.tilt.given));
    rows.judged("tilt", voice.say("built-tilt"), steps::tilt(end, voice), tolerance, tilt);
    let height = (record.height.as_ref().map(|height| voice.given_in_both(height)), height_holds);
    let (designed, tolerance) = (voice.given_in_both(&end.resolved.end.height), rows.either_way(&limits.height.given));
    rows.judged("height", voice.say("record-height"), designed, tolerance, height);
    rows.noted(
        "licence",
        "record-licence",
        licence::number(sheet, voice),
        record.licence.as_ref().map(ToString::to_string),
    );
}

fn runs(found: &RecordSheet<'_>, end: &EndSheet<'_>, rows: &mut Rows) {
    let voice = rows.voice;
    let takes = &end.resolved.radio.power.voltage;
    for (number, run) in end.runs.iter().enumerate() {
        let port = &run.resolved.port.id;
        let record = found.runs.iter().find(|found| found.run == number);
        if run.carries(Carried::Power) {
            let voltage = rows.quantity(record.and_then(|record| record.lines.voltage.value().ok()));
            let holds = record.and_then(|record| found.voltage_holds(record, takes));
            let (drop, takes) = (voice.number(&found.limits.voltage_drop.given), voice.number(takes));
            let tolerance = voice.with("voltage-tolerance", &[("drop", &drop), ("takes", &takes)]);
            let designed = rows.or_more(&voice.line(&run.lines.radio_voltage));
            let (key, item) = (format!("runs.{port}.voltage"), voice.with("record-voltage", &[("port", port)]));
            rows.judged(&key, item, designed, tolerance, (voltage, holds));
        }
        let test = record.and_then(|record| found.document.runs[record.number].cable_test);
        let result = test.map(|test| voice.term(test.word()));
        let passed = test.map(|test| test == TestResult::Passed);
        let (key, item) = (format!("runs.{port}.cable_test"), voice.with("record-cable-test", &[("port", port)]));
        rows.judged(&key, item, voice.say("record-passed"), String::new(), (result, passed));
    }
}

/// What the hop is for, carried over it.
fn service(sheet: &HopSheet<'_>, found: &RecordSheet<'_>, rows: &mut Rows) {
    let (test, limits, voice) = (&found.document.service, &found.limits, rows.voice);
    let [state_holds, rate_holds, clean, long_enough] = found.service_holds(sheet.resolved);
    let capacity = rows.or_more(&voice.number(&limits.capacity.given));
    let state = (test.state.as_ref().map(ToString::to_string), state_holds);
    rows.judged("service.state", voice.say("record-service-state"), String::new(), capacity.clone(), state);
    let rate = (rows.quantity(test.rate.as_ref()), rate_holds);
    rows.judged("service.rate", voice.say("record-service-rate"), voice.number(&limits.capacity.given), capacity, rate);
    let errors = (test.errors.map(|errors| errors.to_string()), clean);
    rows.judged("service.errors", voice.say("record-service-errors"), voice.say("none"), String::new(), errors);
    let duration = (rows.quantity(test.duration.as_ref()), long_enough);
    let least = rows.or_more(&voice.number(&limits.service_test.given));
    rows.judged("service.duration", voice.say("record-service-duration"), String::new(), least, duration);
}

fn grounding(found: &RecordSheet<'_>, end: &EndSheet<'_>, rows: &mut Rows) {
    let (record, own, voice) = (found.document, end.resolved, rows.voice);
    let designed = own.end.grounding.conductor.as_ref().map(|size| voice.number(size));
    let designed = text_or(designed, voice.say("not-stated"));
    let least = rows.or_more(&least_conductor_as_written(end, voice));
    let conductor = (rows.quantity(record.grounding.conductor.as_ref()), found.ground_holds());
    rows.judged("grounding.conductor", voice.say("record-ground"), designed, least, conductor);
    let resistance = record.grounding.resistance.as_ref().map(|ohms| match &record.grounding.method {
        Some(method) => format!("{}, {method}", voice.number(ohms)),
        None => voice.number(ohms),
    });
    rows.noted("grounding.resistance", "record-resistance", String::new(), resistance);
    let serial = |written: Option<&crate::spec::Text>| written.map(ToString::to_string);
    let (radio, antenna) = (serial(record.serials.radio.as_ref()), serial(record.serials.antenna.as_ref()));
    rows.noted("serials.radio", "record-radio-serial", own.radio.title.to_string(), radio);
    rows.noted("serials.antenna", "record-antenna-serial", own.antenna.title.to_string(), antenna);
}
