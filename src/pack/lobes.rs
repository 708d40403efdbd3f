//! Side lobes for whoever aligns: where they are, what the meter shows on them, and a warning in one sentence.

use serde::Serialize;

use super::words::{Table, band, say};
use crate::sheet::{EndSheet, Line, LobeReadingLines};
use crate::units::{Degrees, MeterVolts};

/// What a crew must know of side lobes.
#[derive(Debug, Serialize)]
pub(super) struct Lobes {
    /// The reading that means a side lobe; nothing where it cannot be told.
    warning: Option<String>,
    /// Levels and readings by the ends that are on one.
    table: Table,
}

impl Lobes {
    pub(super) fn of(end: &EndSheet<'_>) -> Self {
        let mut table = Table::new(["On a side lobe", "Level", "Meter"]);
        for (_, who, lines) in end.dish.readings() {
            let capital = super::tables::sentence(who);
            table.row([capital, band(&lines.level_least, &lines.level_most), reading(end, lines)]);
        }
        Self { warning: warning(end), table }
    }
}

/// The meter on a side lobe, or that it stands at its stop.
pub(super) fn reading(end: &EndSheet<'_>, lines: &LobeReadingLines) -> String {
    let (one, other) = (&lines.voltage_at_least, &lines.voltage_at_most);
    match (one.get(), other.get()) {
        (Some(least), Some(most)) if least == most && stands(end, least) => format!("{}, its stop", say(one)),
        _ => band(one, other),
    }
}

fn stands(end: &EndSheet<'_>, reading: MeterVolts) -> bool {
    let range = &end.resolved.radio.readout.range;
    [range.min.value.0, range.max.value.0].contains(&reading.0)
}

/// One side lobe at either end, in one band; with both on one it reads further from the target still.
fn warning(end: &EndSheet<'_>) -> Option<String> {
    let cases = [&end.dish.here, &end.dish.there];
    let all: Vec<&Line<MeterVolts>> =
        cases.into_iter().flat_map(|lines| [&lines.voltage_at_least, &lines.voltage_at_most]).collect();
    let known: Vec<(MeterVolts, &Line<MeterVolts>)> =
        all.iter().map(|line| line.get().map(|volts| (volts, *line))).collect::<Option<_>>()?;
    let by = |one: &&(MeterVolts, &Line<MeterVolts>), other: &&(MeterVolts, &Line<MeterVolts>)| {
        one.0.0.total_cmp(&other.0.0)
    };
    let (least, most) = (known.iter().min_by(by)?, known.iter().max_by(by)?);
    let reading = if least.0 == most.0 { say(least.1) } else { band(least.1, most.1) };
    Some(format!("If you read {reading}, you are on a side lobe."))
}

/// Where the first side lobe lies off the axis.
pub(super) fn angles(end: &EndSheet<'_>) -> String {
    let lobes = &end.dish.lobes;
    angle_band(&lobes.side_lobe_least, &lobes.side_lobe_most)
}

/// Where the gap before it lies.
pub(super) fn nulls(end: &EndSheet<'_>) -> String {
    let lobes = &end.dish.lobes;
    angle_band(&lobes.first_null_least, &lobes.first_null_most)
}

fn angle_band(one: &Line<Degrees>, other: &Line<Degrees>) -> String {
    if one.get() == other.get() { say(one) } else { band(one, other) }
}
