//! The acceptance record of one end as data: as designed, tolerance, as built, within.
//!
//! Verdicts are those of the sheet; nothing is judged here that a rule does not judge.

use serde::Serialize;

use super::acceptance_table;
use super::design::{Open, open};
use super::words::{Fact, Table, fact, text_or};
use crate::finding::Finding;
use crate::finding::rule::Severity;
use crate::listing::Places;
use crate::place::DocumentId;
use crate::sheet::{HopSheet, RecordSheet, required_checks};
use crate::spec::{Check, EndName, Weather};
use crate::voice::Voice;

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
    /// In which language they are told, where that is another.
    spoken: Option<String>,
    #[serde(skip)]
    voice: Voice,
}

/// A check and whether it was done.
#[derive(Debug, Clone, Serialize)]
struct Done {
    id: &'static str,
    sentence: String,
    ticked: bool,
}

impl Acceptance {
    /// That of the newest record of an end, if there is one.
    pub(super) fn of(sheet: &HopSheet<'_>, name: EndName, voice: Voice) -> Option<Self> {
        let (found, end) = (sheet.newest_record(name)?, &sheet.ends[name]);
        let record = found.document;
        let decision = record.decision.as_ref().map_or_else(
            || voice.say("undecided"),
            |made| voice.with("decided", &[("verdict", &voice.term(made.verdict.words())), ("name", &made.by)]),
        );
        let checks = required_checks(end.resolved, end.far);
        let done = |check: &Check| Done {
            id: check.word(),
            sentence: voice.term(check.sentence()),
            ticked: record.checks.contains(check),
        };
        let mut deviations = Table::new(voice, ["deviation-what", "deviation-agreed"]);
        for one in &record.deviations {
            deviations.row([one.what.to_string(), text_or(one.concession.as_ref(), voice.say("not-agreed"))]);
        }
        let mut photos = Table::new(voice, ["photo-file", "photo-shows"]);
        for photo in &record.photos {
            photos.row([photo.file.to_string(), photo.shows.to_string()]);
        }
        Some(Self {
            record: record.at,
            title: voice.with("end-at", &[("end", &name), ("site", &end.resolved.site.title)]),
            verdict: String::new(),
            decision,
            visit: visit(found, voice),
            table: acceptance_table::table(sheet, found, end, voice),
            checks: checks.iter().map(done).collect(),
            deviations,
            photos,
            findings: Vec::new(),
            spoken: voice.of_findings(),
            voice,
        })
    }

    /// The same with its findings looked up in the YAML.
    pub(super) fn with_findings(&self, findings: &[Finding], places: &Places<'_>) -> Self {
        let of = |severity| findings.iter().filter(|finding| finding.severity == severity).count();
        let voice = self.voice;
        let judged = match (of(Severity::Error), of(Severity::Warning)) {
            (0, 0) => voice.say("nothing-against-it"),
            (0, warnings) => voice.count("verdict-warnings", warnings),
            (errors, _) => voice.count("not-acceptable", errors),
        };
        let mut sorted: Vec<&Finding> = findings.iter().collect();
        sorted.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
        let findings = sorted.into_iter().map(|finding| open(finding, places, voice)).collect();
        Self { verdict: format!("{judged} {}", self.decision), findings, ..self.clone() }
    }
}

fn visit(found: &RecordSheet<'_>, voice: Voice) -> Vec<Fact> {
    let record = found.document;
    let instrument = &record.instrument;
    let crew: Vec<String> = record.crew.iter().map(ToString::to_string).collect();
    let crew = (!crew.is_empty()).then(|| crew.join(", "));
    let fact = |key: &str, value: Option<&dyn std::fmt::Display>| {
        fact(voice.say(key), text_or(value, voice.say("not-written")))
    };
    vec![
        fact("visit-record", Some(&record.id)),
        fact("visit-date", record.date.as_ref().map(|date| date as _)),
        fact("visit-crew", crew.as_ref().map(|crew| crew as _)),
        fact("visit-weather", weather(&record.weather, voice).as_ref().map(|weather| weather as _)),
        fact("visit-meter", instrument.title.as_ref().map(|title| title as _)),
        fact("visit-meter-serial", instrument.serial.as_ref().map(|serial| serial as _)),
        fact("visit-calibration", instrument.calibration_due.as_ref().map(|date| date as _)),
        fact("visit-state", record.settings.state.as_ref().map(|state| state as _)),
        fact("visit-revision", record.built_from.revision.as_ref().map(|revision| revision as _)),
        fact("visit-mark", record.built_from.mark.as_ref().map(|mark| mark as _)),
    ]
}

fn weather(weather: &Weather, voice: Voice) -> Option<String> {
    let rain = weather.rain_rate.as_ref().map(|rate| voice.with("weather-rain", &[("rate", &voice.number(rate))]));
    let fog = weather.fog.as_ref().map(|water| voice.with("weather-fog", &[("water", &voice.number(water))]));
    let words = [
        weather.sky.map(|sky| voice.term(sky.word())),
        rain,
        fog,
        weather.temperature.as_ref().map(|temperature| voice.number(temperature)),
        weather.pressure.as_ref().map(|pressure| voice.number(pressure)),
        weather.humidity.as_ref().map(|humidity| voice.number(humidity)),
    ];
    let words: Vec<String> = words.into_iter().flatten().collect();
    (!words.is_empty()).then(|| words.join(", "))
}
