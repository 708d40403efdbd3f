//! The table of an acceptance record: key, item, as designed, tolerance, as built, within.

use super::licence;
use super::steps;
use super::words::{Table, band, given_or, say, shown};
use crate::sheet::{EndSheet, HopSheet, Line, RecordSheet};
use crate::spec::{Reading, Service, TestResult, Text};
use crate::units::{Decibels, Quantity, given_in_both};

/// What stands where a crew wrote nothing.
pub(super) const NOT_WRITTEN: &str = "not written";

/// The table, a row at a time.
struct Rows(Table);

impl Rows {
    /// A row with a tolerance; the sheet says whether it is kept.
    fn judged(
        &mut self,
        key: &str,
        item: &str,
        designed: String,
        tolerance: String,
        (built, kept): (String, Option<bool>),
    ) {
        let within = match kept {
            Some(true) => "yes",
            Some(false) => "NO",
            None => "not judged",
        };
        self.0.row([key.into(), item.into(), designed, tolerance, built, within.into()]);
    }

    /// A row that is only noted.
    fn noted(&mut self, key: &str, item: &str, designed: String, built: String) {
        self.0.row([key.into(), item.into(), designed, String::new(), built, "noted".into()]);
    }

    /// A row that goes with the one it stands by.
    fn beside(&mut self, key: &str, item: &str, designed: String, built: String) {
        self.0.row([key.into(), item.into(), designed, String::new(), built, String::new()]);
    }
}

fn written<T: ToString>(value: Option<T>) -> String {
    value.map_or_else(|| NOT_WRITTEN.to_owned(), |value| shown(&value.to_string()))
}

/// A line as it was found, without the reason why there is none.
fn found_or<Q: Quantity>(line: &Line<Q>) -> String {
    written(line.get())
}

fn either_way(limit: &impl std::fmt::Display) -> String {
    shown(&format!("± {limit}"))
}

pub(super) fn table(sheet: &HopSheet<'_>, found: &RecordSheet<'_>, end: &EndSheet<'_>) -> Table {
    let mut rows = Rows(Table::new(["Key", "Item", "As designed", "Tolerance", "As built", "Within"]));
    levels(sheet, found, end, &mut rows);
    settings(sheet, found, end, &mut rows);
    mounting(sheet, found, end, &mut rows);
    runs(found, end, &mut rows);
    grounding(found, end, &mut rows);
    rows.0
}

fn levels(sheet: &HopSheet<'_>, found: &RecordSheet<'_>, end: &EndSheet<'_>, rows: &mut Rows) {
    let (record, lines, limits) = (found.document, &found.lines, &found.limits);
    let read = |reading: &Reading| {
        let both = [reading.meter.as_ref().map(ToString::to_string), reading.level.as_ref().map(ToString::to_string)];
        let both: Vec<String> = both.into_iter().flatten().collect();
        written((!both.is_empty()).then(|| both.join(", ")))
    };
    rows.beside("", "Level predicted, clear sky", say(&end.lines.target_level), String::new());
    let accepted = band(&lines.expected_least, &lines.expected_most);
    let window = format!("{} ({accepted})", either_way(&limits.window.given));
    let expected = format!("{} that day", say(&lines.expected));
    let measured = (found_or(&lines.measured), found.in_window());
    rows.judged("after_locking", "Level after final torque", expected, window, measured);
    let after = read(&record.after_locking);
    rows.beside("after_locking", "Reading after final torque", say(&lines.expected_voltage), after);
    rows.beside("before_locking", "Reading before locking", String::new(), read(&record.before_locking));
    let moved = (found_or(&lines.moved), found.stayed());
    rows.judged("", "Change on locking", "none".into(), either_way(&limits.locking.given), moved);
    let gap = sheet.disagreement();
    let agrees = gap.map(|gap: Decibels| gap.tidy() <= limits.reciprocity.value());
    let apart = gap.map_or_else(|| "no reading there".to_owned(), |gap| shown(&gap.to_string()));
    let reciprocity = either_way(&limits.reciprocity.given);
    rows.judged("", "Disagreement with the far end", "none".into(), reciprocity, (apart, agrees));
}

fn settings(sheet: &HopSheet<'_>, found: &RecordSheet<'_>, end: &EndSheet<'_>, rows: &mut Rows) {
    let (set, channel) = (&found.document.settings, &sheet.resolved.hop.channel);
    let [power, width, polarisation] = found.as_set(sheet);
    let same = || "as designed".to_owned();
    let designed = shown(&end.resolved.end.transmit_power.to_string());
    let set_power = (written(set.transmit_power.as_ref()), power);
    rows.judged("settings.transmit_power", "Transmit power", designed, same(), set_power);
    let designed = shown(&channel.bandwidth.to_string());
    rows.judged("settings.bandwidth", "Bandwidth", designed, same(), (written(set.bandwidth.as_ref()), width));
    let mounted = (written(set.polarisation.map(|set| set.word().to_owned())), polarisation);
    rows.judged("settings.polarisation", "Polarisation", channel.polarisation.word().into(), same(), mounted);
}

fn mounting(sheet: &HopSheet<'_>, found: &RecordSheet<'_>, end: &EndSheet<'_>, rows: &mut Rows) {
    let (record, lines) = (found.document, &end.lines);
    rows.noted("bearing", "True bearing, peaked by level", say(&lines.true_bearing), written(record.bearing.as_ref()));
    rows.noted("tilt", "Tilt, peaked by level", steps::tilt(end), written(record.tilt.as_ref()));
    let designed = shown(&given_in_both(&end.resolved.end.height));
    let height = written(record.height.as_ref().map(given_in_both));
    rows.noted("height", "Antenna centre above ground", designed, height);
    rows.noted("licence", "Licence or registration", licence::number(sheet), written(record.licence.as_ref()));
}

fn runs(found: &RecordSheet<'_>, end: &EndSheet<'_>, rows: &mut Rows) {
    let takes = &end.resolved.radio.power.voltage;
    for (number, run) in end.runs.iter().enumerate() {
        let port = &run.resolved.port.id;
        let record = found.runs.iter().find(|found| found.run == number);
        if run.carries(Service::Power) {
            let voltage = written(record.and_then(|record| record.lines.voltage.value.as_ref().ok()));
            let holds = record.and_then(|record| found.voltage_holds(record, takes));
            let tolerance = shown(&format!("{} less; {takes}", found.limits.voltage_drop.given));
            let designed = format!("{} or more", say(&run.lines.radio_voltage));
            let (key, item) = (format!("runs.{port}.voltage"), format!("Voltage at the radio, port {port}"));
            rows.judged(&key, &item, designed, tolerance, (voltage, holds));
        }
        let test = record.and_then(|record| found.document.runs[record.number].cable_test);
        let result = (written(test.map(TestResult::word)), test.map(|test| test == TestResult::Passed));
        let (key, item) = (format!("runs.{port}.cable_test"), format!("Test of the cable, port {port}"));
        rows.judged(&key, &item, "passed".into(), String::new(), result);
    }
}

fn grounding(found: &RecordSheet<'_>, end: &EndSheet<'_>, rows: &mut Rows) {
    let (record, own) = (found.document, end.resolved);
    let designed = given_or(own.end.grounding.conductor.as_ref(), "not stated");
    let least = format!("{} or more", shown(&end.ground_written()));
    let conductor = (written(record.grounding.conductor.as_ref()), found.ground_holds());
    rows.judged("grounding.conductor", "Grounding conductor", designed, least, conductor);
    let resistance = record.grounding.resistance.as_ref().map(|ohms| match &record.grounding.method {
        Some(method) => format!("{ohms}, {method}"),
        None => ohms.to_string(),
    });
    rows.noted("grounding.resistance", "Resistance of the earth", String::new(), written(resistance));
    let serial = |text: &Option<Text>| given_or(text.as_ref(), NOT_WRITTEN);
    let (radio, antenna) = (serial(&record.serials.radio), serial(&record.serials.antenna));
    rows.noted("serials.radio", "Radio, serial number", own.radio.title.to_string(), radio);
    rows.noted("serials.antenna", "Antenna, serial number", own.antenna.title.to_string(), antenna);
}
