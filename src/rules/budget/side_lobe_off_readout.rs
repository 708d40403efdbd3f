//! The meter cannot tell a side lobe from the end of its scale.

use crate::rules::prelude::*;

rule! {
    /// The meter cannot tell a side lobe from the end of its scale.
    ///
    /// While sweeping a crew sees the side lobes first. Where the level of one lies beyond the scale, the needle stands at
    /// its stop, and the crew sees nothing until it happens on the beam. Aligning then takes patience, or a read-out of the
    /// level in the radio's own pages.
    ///
    /// Source: the read-out range on the radio's data sheet; side lobes of a round aperture or the measured pattern.
    severity: Advice,
    waivable: WORK,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let end = sheet.resolved.end;
    let Some(readout) = sheet.resolved.readout() else { return };
    let (lines, range) = (&sheet.dish.here, &readout.spec.range);
    let (Some(least), Some(most)) = (lines.voltage_at_least.get(), lines.voltage_at_most.get()) else { return };
    let stop = |volts: MeterVolts| volts.0 <= range.min.value.0 || volts.0 >= range.max.value.0;
    if !(stop(least) && least == most) {
        return;
    }
    let message = format!("end {}: on a side lobe the meter stands at its stop of {least}", sheet.name);
    let label = format!("a side lobe brings {} to {}", line(&lines.level_least), line(&lines.level_most));
    let finding = found.report(&RULE, at!(end.radio), message, label);
    finding.because(at!(readout.range), "the range of the read-out");
    finding.help("sweep slowly and wide: nothing shows until the beam; or read the level in the radio's own pages");
}
