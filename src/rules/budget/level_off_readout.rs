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
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (radio, end, far) = (sheet.resolved.radio, sheet.resolved.end, sheet.far.end);
    let range = &radio.readout.range;
    let readings = [&sheet.lines.target_voltage, &sheet.lines.voltage_at_least, &sheet.lines.voltage_at_most];
    let Some(off) = readings.into_iter().filter_map(Line::get).find(|volts| !range.holds(Volts(volts.0))) else {
        return;
    };
    let message = format!("end {}: the meter would have to show {off}, outside {range}", sheet.name);
    let label = format!("its read-out gives {range}");
    let finding = found.report(&RULE, at!(end.radio), message, label);
    finding.because(at!(radio.readout.range), "the range of the read-out");
    finding.because(at!(far.transmit_power), format!("gives {} here", line(&sheet.lines.target_level)));
    finding.help("align at another power of the far end, or check the two points of the read-out scale");
}
