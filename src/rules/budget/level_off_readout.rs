//! The meter cannot show the level the crew is to align to.

use crate::rules::prelude::*;

rule! {
    /// The meter cannot show the level the crew is to align to.
    ///
    /// The read-out of the radio has a least and a greatest voltage. If the predicted level or its acceptance window lies
    /// beyond, the needle stands still where it should move, and no one can tell a good peak from a bad one. Change the
    /// power for the time of aligning, or the acceptance window.
    ///
    /// Source: the read-out range on the radio's data sheet.
    severity: Error,
    waivable: WORK,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, far, lines) = (sheet.resolved.end, sheet.far.end, &sheet.lines);
    let Some(readout) = sheet.resolved.readout() else { return };
    let range = &readout.spec.range;
    let readings = [
        (&lines.target_voltage, &lines.target_level, "the predicted level"),
        (&lines.voltage_at_least, &lines.level_least, "the lowest level to accept"),
        (&lines.voltage_at_most, &lines.level_most, "the highest level to accept"),
    ];
    let read = readings.into_iter().filter_map(|(volts, level, words)| Some((Volts(volts.get()?.0), level, words)));
    let Some((off, level, words)) = read.into_iter().find(|(volts, ..)| !range.holds(*volts)) else { return };
    let limit = if off < range.min.value { range.min.value } else { range.max.value };
    let (shows, ends, beyond) = apart(MeterVolts(off.0), MeterVolts(limit.0));
    let message =
        format!("end {}: {words} reads {shows}, {beyond} beyond the {ends} where the meter stops", sheet.name);
    let finding = found.report(&RULE, at!(end.radio), message, format!("its read-out gives {range}"));
    finding.measured(off, if off < range.min.value { Worse::Lower } else { Worse::Higher });
    finding.because(at!(readout.range), "the range of the read-out");
    finding.because(at!(far.transmit_power), format!("with this power, {words} is {}", line(level)));
    finding.help(match sheet.align_power {
        Some(power) => format!("align with {power} at the far end, or check the two points of the read-out scale"),
        None => "take a smaller window, or check the range and the two points of the read-out scale".into(),
    });
}
