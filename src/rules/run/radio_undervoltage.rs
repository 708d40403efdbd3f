//! The voltage at the radio is below what it runs on.

use crate::rules::prelude::*;

rule! {
    /// The voltage at the radio is below what it runs on.
    ///
    /// Taken at the least supply voltage, the most the radio draws with all it passes on, and the hottest cable: the radio
    /// that starts in the morning and reboots on a hot afternoon.
    ///
    /// Shorten the run, take thicker conductors or a supply that powers four pairs or gives more voltage.
    ///
    /// Source: constant-power load behind the loop, upper root; it reproduces the least device voltages of IEEE 802.3.
    severity: Error,
    waivable: SERVICE,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(voltage) = run.lines.radio_voltage.get() else { return };
    let least = sheet.resolved.radio.power.voltage.min.value;
    if voltage >= least {
        return;
    }
    let (has, needs, below) = apart(voltage, least);
    let message = format!("end {}: {has} at the radio, {below} below the {needs} it runs on", sheet.name);
    starving(&RULE, sheet, run, message, found).measured(voltage, Worse::Lower);
}
