//! The radio runs, but below the voltage at which it has switched on for certain.

use crate::rules::prelude::*;
use crate::spec::Standard;

rule! {
    /// The radio runs, but below the voltage at which it has switched on for certain.
    ///
    /// A device switches on at one voltage and off at a lower one. Where its load pulls the line below the first, it may
    /// start, sag, drop out and start again without end after every power cut. The voltage is the `start` of the radio's
    /// power. Without it only a passive feed is judged, by `limits.start_voltage` of the network, 42 V unless it says
    /// otherwise: a device that conforms to IEEE 802.3 has switched on by 42 V before it loads the line, and then runs on
    /// below that.
    ///
    /// Source: IEEE 802.3-2022, a device is on at 42 V and off at 30 V (from memory, not seen).
    severity: Warning,
    waivable: SERVICE,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(voltage) = run.lines.radio_voltage.get() else { return };
    let (spec, radio) = (run.resolved.run, sheet.resolved.radio);
    let passive = run.resolved.supply.is_none_or(|supply| supply.standard == Standard::Passive);
    if !passive && radio.power.start.is_none() {
        return;
    }
    let limit = &sheet.practice.start_voltage;
    let start = radio.power.start.as_ref().map_or_else(|| limit.value(), |start| start.value);
    // Too little to run at all, or too little in hand, is said by other rules.
    let least = radio.power.voltage.min.value;
    if voltage < least || voltage - least < sheet.voltage_reserve.value() || voltage >= start {
        return;
    }
    let (has, starts, below) = apart(voltage, start);
    let message = format!("end {}: {has} at the radio under load, {below} below the {starts} it starts at", sheet.name);
    let finding = found.report(&RULE, at!(spec.outdoor), message, format!("leaves {has} at the radio"));
    finding.measured(voltage, Worse::Lower);
    if radio.power.start.is_some() {
        finding.because(at!(radio.power.start), "where it has switched on");
    } else {
        threshold(finding, limit, "where it has switched on".into());
    }
    finding.because(at!(radio.power.voltage), "what the radio runs on");
    finding.because(at!(spec.supply), format!("gives {}", line(&run.lines.supply_voltage)));
    finding.help(run.more_volts());
}
