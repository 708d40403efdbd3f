//! The voltage at the radio is barely above what it runs on.

use crate::rules::prelude::*;

rule! {
    /// The voltage at the radio is barely above what it runs on.
    ///
    /// Contacts age, supplies sag and summers get hotter. Some volts in hand keep the radio from rebooting. The reserve is
    /// `limits.voltage_reserve` of the network, 2 V unless it says otherwise.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    waivable: SERVICE,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(voltage) = run.lines.radio_voltage.get() else { return };
    let (spec, radio) = (run.resolved.run, sheet.resolved.radio);
    let least = radio.power.voltage.min.value;
    let wanted = sheet.voltage_reserve.value();
    let reserve = voltage - least;
    if voltage < least || reserve >= wanted {
        return;
    }
    let (has, wants, _) = apart(reserve, wanted);
    let message = format!("end {}: {has} in hand above the {least} the radio runs on, {wants} wanted", sheet.name);
    let finding = found.report(&RULE, at!(spec.outdoor), message, format!("leaves {voltage} at the radio"));
    finding.measured(reserve, Worse::Lower);
    finding.because(at!(radio.power.voltage), "what the radio runs on");
    finding.help(run.more_volts());
}
