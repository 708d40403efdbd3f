//! The record page of an install pack, and the items that it shares with the form and the acceptance record.
//!
//! The key printed beside an item is the one under which it is written in a `record` document, so that nothing has to be
//! translated on the way back.

use serde::Serialize;

use super::figures::{self, Figure};
use super::licence;
use super::steps;
use super::words::{Fact, Table, text_or};
use crate::network::ResolvedEnd;
use crate::sheet::{EndSheet, HopSheet, required_checks};
use crate::spec::{Carried, EndName};
use crate::voice::Voice;

/// Something that is written down at an end.
#[derive(Debug)]
pub(super) struct Item {
    /// Its key in a record: `after_locking.meter`, `runs.main.voltage`.
    pub key: String,
    /// What it is.
    pub words: String,
    /// What the design says.
    pub designed: String,
    /// What may be found, where that is bounded.
    pub band: Option<String>,
    /// The unit to write it in, or the words to choose from.
    pub unit: &'static str,
}

/// All items of an end, in the order of the form.
pub(super) fn items(sheet: &HopSheet<'_>, end: &EndSheet<'_>, voice: Voice) -> Vec<Item> {
    let (own, lines) = (end.resolved, &end.lines);
    let (spec, channel) = (own.end, &sheet.resolved.hop.channel);
    let volts = voice.band(&lines.voltage_at_least, &lines.voltage_at_most);
    let level = voice.band(&lines.level_least, &lines.level_most);
    let item = |key: &str, words: &str, designed: String, band: Option<&String>, unit| Item {
        key: key.into(),
        words: voice.say(words),
        designed,
        band: band.cloned(),
        unit,
    };
    let (target, target_volts) = (|| voice.line(&lines.target_level), || voice.line(&lines.target_voltage));
    let ground = own.end.grounding.conductor.as_ref().map(|size| voice.number(size));
    let polarisation = voice.term(channel.polarisation.word());
    let metered = own.radio.readout.is_some();
    let mut items = vec![
        item("settings.transmit_power", "record-power", voice.number(&spec.transmit_power), None, "dBm"),
        item("settings.bandwidth", "record-bandwidth", voice.number(&channel.bandwidth), None, "MHz"),
        item("settings.polarisation", "record-polarisation", polarisation, None, ""),
        item("before_locking.meter", "record-meter-before", target_volts(), Some(&volts), "V"),
        item("before_locking.level", "record-level-before", target(), Some(&level), "dBm"),
        item("after_locking.meter", "record-meter-after", target_volts(), Some(&volts), "V"),
        item("after_locking.level", "record-level-after", target(), Some(&level), "dBm"),
        item("bearing", "record-bearing", voice.line(&lines.true_bearing), None, "°"),
        item("tilt", "record-tilt", steps::tilt(end, voice), None, "°"),
        item("height", "record-height", voice.given_in_both(&spec.height), None, "m"),
        item("licence", "record-licence", licence::number(sheet, voice), None, ""),
    ];
    if !metered {
        items.retain(|item| !["before_locking.meter", "after_locking.meter"].contains(&item.key.as_str()));
    }
    items.extend(run_items(end, voice));
    items.extend([
        item("grounding.conductor", "record-ground", text_or(ground, voice.say("not-set")), None, "mm²"),
        item("grounding.resistance", "record-resistance", String::new(), None, "ohm"),
        item("serials.radio", "record-radio-serial", own.radio.title.to_string(), None, ""),
        item("serials.antenna", "record-antenna-serial", own.antenna.title.to_string(), None, ""),
    ]);
    items
}

/// Those of the cable runs.
fn run_items(end: &EndSheet<'_>, voice: Voice) -> Vec<Item> {
    let mut items = Vec::new();
    for run in &end.runs {
        let port = &run.resolved.port.id;
        let of = |key: &str, words: &str, designed: String, unit| Item {
            key: format!("runs.{port}.{key}"),
            words: voice.with(words, &[("port", port)]),
            designed,
            band: None,
            unit,
        };
        if run.carries(Carried::Power) {
            let least = voice.with("or-more", &[("least", &voice.line(&run.lines.radio_voltage))]);
            items.push(of("voltage", "record-voltage", least, "V"));
        }
        items.push(of("cable_test", "record-cable-test", voice.say("record-passed"), ""));
    }
    items
}

/// What the test of the service must carry, and for how long.
pub(super) fn service(sheet: &HopSheet<'_>, voice: Voice) -> [String; 2] {
    let target = &sheet.target;
    let or_more = |least: String| voice.with("or-more", &[("least", &least)]);
    [or_more(voice.number(&target.capacity.given)), or_more(voice.number(&target.service_test.given))]
}

/// The page.
#[derive(Debug, Serialize)]
pub(super) struct RecordPage {
    /// The id that `new record` gives the next record of this end, in words and as a code.
    id: String,
    code: Option<Figure>,
    table: Table,
    /// What the test of the service must carry, before room for what it did.
    service: String,
    /// The sentence of each check, and its id.
    checks: Vec<Fact>,
}

impl RecordPage {
    pub(super) fn of(sheet: &HopSheet<'_>, end: &EndSheet<'_>, voice: Voice) -> Self {
        let taken = |id: &str| sheet.records.iter().any(|record| *record.document.id == *id);
        let id = free_id(&sheet.resolved.hop.id, end.name, taken);
        let code = figures::code(&id, voice);
        let mut table = Table::new(voice, ["key", "item", "as-designed", "as-built", "not-applicable"]);
        for item in items(sheet, end, voice) {
            let designed = match item.band {
                Some(band) => format!("{} ({band})", item.designed),
                None => item.designed,
            };
            let box_for =
                if may_not_apply(&item.key, end.resolved) { voice.say("not-applicable") } else { String::new() };
            table.row([item.key, item.words, designed, item.unit.into(), box_for]);
        }
        let checks = required_checks(end.resolved, end.far);
        let checks =
            checks.iter().map(|check| Fact { label: voice.term(check.sentence()), value: check.word().into() });
        let [rate, time] = service(sheet, voice);
        let service = voice.with("field-service", &[("rate", &rate), ("time", &time)]);
        Self { id, code, table, service, checks: checks.collect() }
    }
}

/// Whether an item is missing at some ends for good reasons: a radio that shows no level, an antenna that is part of its
/// radio, a link that needs no licence, an earth that somebody else answers for.
fn may_not_apply(key: &str, own: &ResolvedEnd<'_>) -> bool {
    match key {
        // Beside a voltage the radio may show no level; where it is all there is to read, it is not left out.
        "before_locking.level" | "after_locking.level" => own.radio.readout.is_some(),
        "licence" | "grounding.resistance" | "serials.antenna" => true,
        _ => false,
    }
}

/// The first id of a record of this end that is not taken: `HOP-END-NUMBER`.
pub(super) fn free_id(hop: &str, end: EndName, taken: impl Fn(&str) -> bool) -> String {
    let mut number = 1_u32;
    loop {
        let id = format!("{hop}-{end}-{number}");
        if !taken(&id) {
            return id;
        }
        number += 1;
    }
}
