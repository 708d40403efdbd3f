//! The acceptance record of one end as data: as designed, tolerance, as built, within.
//!
//! Verdicts are those of the sheet; nothing is judged here that a rule does not judge.

use serde::Serialize;

use super::acceptance_table::{self, NOT_WRITTEN};
use super::design::{Open, open};
use super::words::{Fact, Table, count, fact, given_or};
use crate::finding::Finding;
use crate::network::Files;
use crate::place::DocumentId;
use crate::rule::Severity;
use crate::sheet::{HopSheet, RecordSheet, required_checks};
use crate::spec::{Check, Date, EndName, Text, Weather};

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
        let done = |check: &Check| Done {
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
            table: acceptance_table::table(sheet, found, end),
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
