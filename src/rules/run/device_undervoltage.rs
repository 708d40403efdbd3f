//! Too little reaches a device that is fed through the radio.

use crate::rules::prelude::*;

rule! {
    /// Too little reaches a device that is fed through the radio.
    ///
    /// Cable, radio and device are solved together at the least supply voltage, the most that each draws and the hottest
    /// cable: what hangs on the radio lowers the voltage at the radio too.
    ///
    /// Source: constant-power loads one behind the other, Ohm's and Kirchhoff's laws.
    severity: Error,
    waivable: SERVICE,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(onward) = &run.onward else { return };
    let (Ok(_), Some(least)) = (onward.port_voltage.value(), onward.least.get()) else { return };
    let spec = run.resolved.run;
    let message = match onward.voltage.get() {
        Some(voltage) if voltage >= least => return,
        Some(voltage) => {
            let (has, needs, below) = apart(voltage, least);
            format!(
                "end {}: {has} at what port `{}` feeds, {below} below the {needs} it runs on",
                sheet.name, spec.port
            )
        }
        None => format!(
            "end {}: what port `{}` feeds draws more than its cable can bring from {}",
            sheet.name,
            spec.port,
            line(&onward.port_voltage)
        ),
    };
    let loop_resistance = format!("loop resistance {}", line(&onward.loop_resistance));
    let finding = found.report(&RULE, at!(spec.outdoor), message, loop_resistance);
    // Where nothing settles, nothing is left of it.
    finding.measured(onward.voltage.get().unwrap_or_default(), Worse::Lower);
    finding.because(fed_at(spec), "what it feeds");
    finding.because(at!(spec.cable), "this cable");
    // A converter in the radio gives what it gives, however much reaches the radio.
    let straight = run.resolved.port.passes_on.as_ref().is_some_and(|hands| hands.voltage.is_none());
    let feeding = sheet.runs.iter().find(|other| straight && other.lines.radio_voltage.get().is_some());
    let Some(feeding) = feeding else {
        finding.help("a shorter cable or thicker conductors to it, or feed the device from a supply of its own");
        return;
    };
    let from = feeding.resolved.run;
    finding.because(at!(from.outdoor), format!("leaves {} at the radio", line(&feeding.lines.radio_voltage)));
    finding.help(format!("on the run to port `{}`: {}", from.port, feeding.more_volts()));
}
