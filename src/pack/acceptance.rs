//! The acceptance record of one end as data: as designed, tolerance, as built, within.
//!
//! Verdicts are those of the sheet; nothing is judged here that a rule does not judge.

use serde::Serialize;

use super::design::{Open, open};
use super::steps;
use super::words::{Fact, Table, count, fact, given_or, say, shown};
use crate::finding::Finding;
use crate::network::Files;
use crate::place::DocumentId;
use crate::rule::Severity;
use crate::sheet::{EndSheet, HopSheet, Line, RecordSheet, required_checks};
use crate::spec::{Date, EndName, Text, Weather};
use crate::units::{Decibels, Quantity, given_in_both};

/// All pages.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Acceptance {
    #[serde(skip)]
    pub record: DocumentId,
    title: String,
    verdict: String,
    decision: String,
    visit: Vec<Fact>,
    table: Table,
    checks: Vec<Done>,
    deviations: Table,
    photos: Table,
    findings: Vec<Open>,
}

/// A check and whether it was done.
#[derive(Debug, Clone, Serialize)]
struct Done {
    id: &'static str,
    sentence: &'static str,
    ticked: bool,
}

impl Acceptance {
    /// That of the newest record of an end, if there is one.
    pub(super) fn of(sheet: &HopSheet<'_>, name: EndName) -> Option<Self> {
        let (found, end) = (sheet.newest_record(name)?, sheet.end(name));
        let record = found.document;
        let decision = record.decision.as_ref().map_or_else(
            || "Nothing is decided yet.".to_owned(),
            |made| format!("Decision written: {} by {}.", made.verdict.words(), made.by),
        );
        let checks = required_checks(end.resolved, end.far);
        let done = |check: &crate::spec::Check| Done {
            id: check.word(),
            sentence: check.sentence(),
            ticked: record.checks.contains(check),
        };
        let mut deviations = Table::new(["What is different", "Agreed in"]);
        for one in &record.deviations {
            deviations.row([one.what.to_string(), given_or(one.concession.as_ref(), "not agreed")]);
        }
        let mut photos = Table::new(["File", "Shows"]);
        for photo in &record.photos {
            photos.row([photo.file.to_string(), photo.shows.to_string()]);
        }
        Some(Self {
            record: record.at,
            title: format!("End {}: {}", name.letter(), end.resolved.site.title),
            verdict: String::new(),
            decision,
            visit: visit(found),
            table: table(sheet, found, end),
            checks: checks.iter().map(done).collect(),
            deviations,
            photos,
            findings: Vec::new(),
        })
    }

    /// The same with its findings looked up in the YAML.
    pub(super) fn with_findings(&self, findings: &[Finding], files: &Files) -> Self {
        let of = |severity| findings.iter().filter(|finding| finding.severity == severity).count();
        let judged = match (of(Severity::Error), of(Severity::Warning)) {
            (0, 0) => "Nothing found against it by the rules run.".to_owned(),
            (0, warnings) => format!("{} to weigh.", count(warnings, "warning", "warnings")),
            (errors, _) => format!("{}: not to be accepted as it is.", count(errors, "error", "errors")),
        };
        let mut sorted: Vec<&Finding> = findings.iter().collect();
        sorted.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
        let findings = sorted.into_iter().map(|finding| open(finding, files)).collect();
        Self { verdict: format!("{judged} {}", self.decision), findings, ..self.clone() }
    }
}

fn date(date: Option<Date>) -> String {
    date.map_or_else(|| NOT_WRITTEN.into(), |date| date.to_string())
}

const NOT_WRITTEN: &str = "not written";

fn visit(found: &RecordSheet<'_>) -> Vec<Fact> {
    let record = found.document;
    let instrument = &record.instrument;
    let crew: Vec<String> = record.crew.iter().map(ToString::to_string).collect();
    let crew = if crew.is_empty() { NOT_WRITTEN.to_owned() } else { crew.join(", ") };
    let text = |label: &str, text: Option<&Text>| Fact { label: label.into(), value: given_or(text, NOT_WRITTEN) };
    vec![
        fact("Record", &record.id),
        fact("Visit", date(record.date)),
        Fact { label: "Crew".into(), value: crew },
        fact("Weather", weather(&record.weather)),
        text("Meter", instrument.title.as_ref()),
        text("Its serial number", instrument.serial.as_ref()),
        fact("Calibration due", date(instrument.calibration_due)),
        text("State set", record.settings.state.as_ref()),
        text("Revision in hand", record.built_from.revision.as_ref()),
        text("Mark in hand", record.built_from.mark.as_ref()),
    ]
}

fn weather(weather: &Weather) -> String {
    let words = [
        weather.sky.map(|sky| sky.word().to_owned()),
        weather.rain_rate.as_ref().map(|rate| format!("rain {rate}")),
        weather.fog.as_ref().map(|water| format!("water {water}")),
        weather.temperature.as_ref().map(ToString::to_string),
        weather.pressure.as_ref().map(ToString::to_string),
        weather.humidity.as_ref().map(ToString::to_string),
    ];
    let words: Vec<String> = words.into_iter().flatten().collect();
    if words.is_empty() { NOT_WRITTEN.into() } else { words.join(", ") }
}

/// `yes`, `NO`, or that it cannot be told.
fn within(judged: Option<bool>) -> String {
    match judged {
        Some(true) => "yes",
        Some(false) => "NO",
        None => "not judged",
    }
    .into()
}

/// A value that is only noted.
const NOTED: &str = "noted";

fn plus_minus(limit: &impl std::fmt::Display) -> String {
    shown(&format!("± {limit}"))
}

/// A line as it was found, without the reason why there is none.
fn found_or<Q: Quantity>(line: &Line<Q>) -> String {
    line.get().map_or_else(|| NOT_WRITTEN.into(), |value| shown(&value.to_string()))
}

fn table(sheet: &HopSheet<'_>, found: &RecordSheet<'_>, end: &EndSheet<'_>) -> Table {
    let mut table = Table::new(["Key", "Item", "As designed", "Tolerance", "As built", "Within"]);
    let mut add = |key: &str, item: &str, designed: String, tolerance: String, built: String, within: String| {
        table.row([key.into(), item.into(), designed, tolerance, built, within]);
    };
    let (record, lines, limits) = (found.document, &found.lines, &found.limits);
    let (own, channel) = (end.resolved, &sheet.resolved.hop.channel);
    let (settings, as_designed) = (&record.settings, || "as designed".to_owned());
    let written = |value: Option<String>| value.map_or_else(|| NOT_WRITTEN.to_owned(), |text| shown(&text));
    let read = |reading: &crate::spec::Reading| {
        let both = [reading.meter.as_ref().map(ToString::to_string), reading.level.as_ref().map(ToString::to_string)];
        let both: Vec<String> = both.into_iter().flatten().collect();
        written((!both.is_empty()).then(|| both.join(", ")))
    };

    add("", "Level predicted, clear sky", say(&end.lines.target_level), String::new(), String::new(), String::new());
    let window = format!(
        "{} ({})",
        plus_minus(&limits.window.given),
        super::words::band(&lines.expected_least, &lines.expected_most)
    );
    let expected = format!("{} that day", say(&lines.expected));
    add(
        "after_locking",
        "Level after final torque",
        expected,
        window,
        found_or(&lines.measured),
        within(found.in_window()),
    );
    let meter = say(&lines.expected_voltage);
    add(
        "after_locking",
        "Reading after final torque",
        meter,
        String::new(),
        read(&record.after_locking),
        String::new(),
    );
    add(
        "before_locking",
        "Reading before locking",
        String::new(),
        String::new(),
        read(&record.before_locking),
        String::new(),
    );
    let locking = plus_minus(&limits.locking.given);
    add("", "Change on locking", "none".into(), locking, found_or(&lines.moved), within(found.stayed()));
    let gap = sheet.disagreement();
    let reciprocity = plus_minus(&limits.reciprocity.given);
    let agrees = gap.map(|gap| gap.tidy() <= limits.reciprocity.value());
    let apart = gap.map_or_else(|| "no reading there".to_owned(), |gap: Decibels| shown(&gap.to_string()));
    add("", "Disagreement with the far end", "none".into(), reciprocity, apart, within(agrees));

    let [power, width, polarisation] = found.as_set(sheet);
    let set = written(settings.transmit_power.as_ref().map(ToString::to_string));
    let designed = shown(&own.end.transmit_power.to_string());
    add("settings.transmit_power", "Transmit power", designed, as_designed(), set, within(power));
    let set = written(settings.bandwidth.as_ref().map(ToString::to_string));
    add("settings.bandwidth", "Bandwidth", shown(&channel.bandwidth.to_string()), as_designed(), set, within(width));
    let set = written(settings.polarisation.map(|set| set.word().to_owned()));
    let designed = channel.polarisation.word().to_owned();
    add("settings.polarisation", "Polarisation", designed, as_designed(), set, within(polarisation));

    let peaked = || "peaked by level".to_owned();
    let bearing = written(record.bearing.as_ref().map(ToString::to_string));
    add("bearing", "True bearing", say(&end.lines.true_bearing), peaked(), bearing, NOTED.into());
    let tilt = written(record.tilt.as_ref().map(ToString::to_string));
    add("tilt", "Tilt", steps::tilt(end), peaked(), tilt, NOTED.into());
    let height = written(record.height.as_ref().map(given_in_both));
    add(
        "height",
        "Antenna centre above ground",
        shown(&given_in_both(&own.end.height)),
        String::new(),
        height,
        NOTED.into(),
    );
    runs(found, end, &mut add);

    let conductor = record.grounding.conductor.as_ref();
    let least = format!("{} or more", shown(&end.ground_written()));
    let designed = given_or(own.end.grounding.conductor.as_ref(), "not stated");
    let built = written(conductor.map(ToString::to_string));
    add("grounding.conductor", "Grounding conductor", designed, least, built, within(found.ground_holds()));
    let resistance = written(record.grounding.resistance.as_ref().map(|ohms| match &record.grounding.method {
        Some(method) => format!("{ohms}, {method}"),
        None => ohms.to_string(),
    }));
    add("grounding.resistance", "Resistance of the earth", String::new(), String::new(), resistance, NOTED.into());
    let serial = |text: &Option<Text>| given_or(text.as_ref(), NOT_WRITTEN);
    let (radio, antenna) = (serial(&record.serials.radio), serial(&record.serials.antenna));
    add("serials.radio", "Radio, serial number", own.radio.title.to_string(), String::new(), radio, NOTED.into());
    add(
        "serials.antenna",
        "Antenna, serial number",
        own.antenna.title.to_string(),
        String::new(),
        antenna,
        NOTED.into(),
    );
    table
}

fn runs(found: &RecordSheet<'_>, end: &EndSheet<'_>, add: &mut impl FnMut(&str, &str, String, String, String, String)) {
    let takes = &end.resolved.radio.power.voltage;
    for (number, run) in end.runs.iter().enumerate() {
        let port = &run.resolved.port.id;
        let written = found.runs.iter().find(|found| found.run == number);
        if run.carries(crate::spec::Service::Power) {
            let built = written.and_then(|run| run.lines.voltage.value.as_ref().ok()).map(ToString::to_string);
            let tolerance = format!("{} less; {takes}", found.limits.voltage_drop.given);
            let holds = written.and_then(|run| found.voltage_holds(run, takes));
            let designed = format!("{} or more", say(&run.lines.radio_voltage));
            let built = built.map_or_else(|| NOT_WRITTEN.into(), |text| shown(&text));
            let (key, item) = (format!("runs.{port}.voltage"), format!("Voltage at the radio, port {port}"));
            add(&key, &item, designed, shown(&tolerance), built, within(holds));
        }
        let test = written.and_then(|run| found.document.runs[run.number].cable_test);
        let passed = test.map(|test| test == crate::spec::TestResult::Passed);
        let built = test.map_or_else(|| NOT_WRITTEN.to_owned(), |test| test.word().to_owned());
        let (key, item) = (format!("runs.{port}.cable_test"), format!("Test of the cable, port {port}"));
        add(&key, &item, "passed".into(), String::new(), built, within(passed));
    }
}
