//! Side lobes for whoever aligns: where they are, what the meter shows on them, and a warning in one sentence.

use serde::Serialize;

use super::words::{Table, sentence};
use crate::sheet::{EndSheet, Line, LobeReadingLines};
use crate::spec::AlignedBy;
use crate::units::{Degrees, MeterVolts, Quantity};
use crate::voice::Voice;

/// What a crew must know of side lobes.
#[derive(Debug, Serialize)]
pub(super) struct Lobes {
    /// The reading that means a side lobe; nothing where it cannot be told.
    warning: Option<String>,
    /// Levels and readings by the ends that are on one.
    table: Table,
}

impl Lobes {
    pub(super) fn of(end: &EndSheet<'_>, voice: Voice) -> Self {
        let metered = end.resolved.radio.readout.is_some();
        let mut table = Table::new(voice, ["lobes-on", "lobes-level"]);
        if metered {
            table.head.push(voice.say("lobes-meter"));
        }
        for (_, who, lines) in end.dish.readings() {
            let level = voice.band(&lines.level_least, &lines.level_most);
            let mut row = vec![sentence(&voice.term(who)), level];
            row.extend(metered.then(|| reading(end, lines, voice)));
            table.rows.push(row);
        }
        Self { warning: warning(end, voice), table }
    }
}

/// The meter on a side lobe, or that it stands at its stop.
pub(super) fn reading(end: &EndSheet<'_>, lines: &LobeReadingLines, voice: Voice) -> String {
    let (one, other) = (&lines.voltage_at_least, &lines.voltage_at_most);
    match (one.get(), other.get()) {
        (Some(least), Some(most)) if least == most && stands(end, least) => {
            voice.with("lobes-stop", &[("reading", &voice.line(one))])
        }
        _ => voice.band(one, other),
    }
}

fn stands(end: &EndSheet<'_>, reading: MeterVolts) -> bool {
    let Some(readout) = &end.resolved.radio.readout else { return false };
    let range = &readout.range;
    [range.min.value.0, range.max.value.0].contains(&reading.0)
}

/// One side lobe at either end, in one band; with both on one it reads further from the target still.
fn warning(end: &EndSheet<'_>, voice: Voice) -> Option<String> {
    let cases = [&end.dish.here, &end.dish.there];
    let reading = match end.resolved.radio.aligned_by()? {
        AlignedBy::Voltage(_) => {
            band_of(cases.map(|lines| [&lines.voltage_at_least, &lines.voltage_at_most]), |volts| volts.0, voice)
        }
        AlignedBy::Level(_) => {
            band_of(cases.map(|lines| [&lines.level_least, &lines.level_most]), |level| level.0, voice)
        }
        AlignedBy::Indication(_) => None,
    };
    Some(voice.with("lobes-warning", &[("reading", &reading?)]))
}

/// From the least to the greatest of some lines; none where one of them is missing.
fn band_of<Q: Quantity>(lines: [[&Line<Q>; 2]; 2], number: impl Fn(Q) -> f64, voice: Voice) -> Option<String> {
    let known: Vec<(f64, &Line<Q>)> =
        lines.into_iter().flatten().map(|line| line.get().map(|value| (number(value), line))).collect::<Option<_>>()?;
    let by = |one: &&(f64, &Line<Q>), other: &&(f64, &Line<Q>)| one.0.total_cmp(&other.0);
    let (least, most) = (known.iter().min_by(by)?, known.iter().max_by(by)?);
    Some(if least.0.total_cmp(&most.0).is_eq() { voice.line(least.1) } else { voice.band(least.1, most.1) })
}

/// Where the first side lobe lies off the axis.
pub(super) fn angles(end: &EndSheet<'_>, voice: Voice) -> String {
    let lobes = &end.dish.lobes;
    angle_band(&lobes.side_lobe_least, &lobes.side_lobe_most, voice)
}

/// Where the gap before it lies.
pub(super) fn nulls(end: &EndSheet<'_>, voice: Voice) -> String {
    let lobes = &end.dish.lobes;
    angle_band(&lobes.first_null_least, &lobes.first_null_most, voice)
}

fn angle_band(one: &Line<Degrees>, other: &Line<Degrees>, voice: Voice) -> String {
    if one.get() == other.get() { voice.line(one) } else { voice.band(one, other) }
}
