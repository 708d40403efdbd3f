//! The record page of an install pack, and the items that it shares with the form and the acceptance record.
//!
//! The key printed beside an item is the one under which it is written in a `record` document, so that nothing has to be
//! translated on the way back.

use serde::Serialize;

use super::figures::{self, Figure};
use super::form;
use super::licence;
use super::steps;
use super::words::{Fact, Table, band, given_or, say, shown};
use crate::sheet::{EndSheet, HopSheet, required_checks};
use crate::spec::Service;
use crate::units::given_in_both;

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
pub(super) fn items(sheet: &HopSheet<'_>, end: &EndSheet<'_>) -> Vec<Item> {
    let (own, lines) = (end.resolved, &end.lines);
    let (spec, channel) = (own.end, &sheet.resolved.hop.channel);
    let volts = band(&lines.voltage_at_least, &lines.voltage_at_most);
    let level = band(&lines.level_least, &lines.level_most);
    let item = |key: &str, words: &str, designed: String, band: Option<&String>, unit| Item {
        key: key.into(),
        words: words.into(),
        designed,
        band: band.cloned(),
        unit,
    };
    let (target, target_volts) = (|| say(&lines.target_level), || say(&lines.target_voltage));
    let ground = own.end.grounding.conductor.as_ref();
    let mut items = vec![
        item("settings.transmit_power", "Transmit power", shown(&spec.transmit_power.to_string()), None, "dBm"),
        item("settings.bandwidth", "Bandwidth", shown(&channel.bandwidth.to_string()), None, "MHz"),
        item("settings.polarisation", "Polarisation", channel.polarisation.word().into(), None, ""),
        item("before_locking.meter", "Meter before locking", target_volts(), Some(&volts), "V"),
        item("before_locking.level", "Level before locking", target(), Some(&level), "dBm"),
        item("after_locking.meter", "Meter after final torque", target_volts(), Some(&volts), "V"),
        item("after_locking.level", "Level after final torque", target(), Some(&level), "dBm"),
        item("bearing", "True bearing set", say(&lines.true_bearing), None, "°"),
        item("tilt", "Tilt set", steps::tilt(end), None, "°"),
        item("height", "Antenna centre above ground", shown(&given_in_both(&spec.height)), None, "m"),
        item("licence", "Licence or registration", licence::number(sheet), None, ""),
    ];
    for run in &end.runs {
        let port = &run.resolved.port.id;
        let of = |key: &str, words: &str, designed: String, unit| Item {
            key: format!("runs.{port}.{key}"),
            words: format!("{words}, port {port}"),
            designed,
            band: None,
            unit,
        };
        if run.carries(Service::Power) {
            let least = format!("{} or more", say(&run.lines.radio_voltage));
            items.push(of("voltage", "Voltage at the radio", least, "V"));
        }
        items.push(of("cable_test", "Test of the cable", "passed".into(), ""));
    }
    items.extend([
        item("grounding.conductor", "Grounding conductor", given_or(ground, "NOT SET"), None, "mm²"),
        item("grounding.resistance", "Resistance of the earth", String::new(), None, "ohm"),
        item("serials.radio", "Radio, serial number", own.radio.title.to_string(), None, ""),
        item("serials.antenna", "Antenna, serial number", own.antenna.title.to_string(), None, ""),
    ]);
    items
}

/// The page.
#[derive(Debug, Serialize)]
pub(super) struct RecordPage {
    /// The id that `new record` gives the next record of this end, in words and as a code.
    id: String,
    code: Option<Figure>,
    table: Table,
    /// The sentence of each check, and its id.
    checks: Vec<Fact>,
}

impl RecordPage {
    pub(super) fn of(sheet: &HopSheet<'_>, end: &EndSheet<'_>) -> Self {
        let taken = |id: &str| sheet.records.iter().any(|record| *record.document.id == *id);
        let id = form::free_id(&sheet.resolved.hop.id, end.name, taken);
        let code = figures::code(&id);
        let mut table = Table::new(["Key", "Item", "As designed", "As built", "n/a"]);
        for item in items(sheet, end) {
            let designed = match item.band {
                Some(band) => format!("{} ({band})", item.designed),
                None => item.designed,
            };
            let box_for = if may_not_apply(&item.key) { "n/a" } else { "" };
            table.row([item.key, item.words, designed, item.unit.into(), box_for.into()]);
        }
        let checks = required_checks(end.resolved, end.far);
        let checks = checks.iter().map(|check| Fact { label: check.sentence().into(), value: check.word().into() });
        Self { id, code, table, checks: checks.collect() }
    }
}

/// Whether an item is missing at some ends for good reasons: a radio that shows no level, an antenna that is part of its
/// radio, a link that needs no licence, an earth that somebody else answers for.
fn may_not_apply(key: &str) -> bool {
    ["before_locking.level", "after_locking.level", "licence", "grounding.resistance", "serials.antenna"].contains(&key)
}
