//! A port hands on more power than it can.

use crate::rules::prelude::*;

rule! {
    /// A port hands on more power than it can.
    ///
    /// What the port gives is the draw of the device and what the cable to it loses. Past its limit the radio switches the
    /// port off, or worse.
    ///
    /// Source: the power of the port on the radio's data sheet.
    severity: Error,
    never_waived: SHOCKS,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (Some(onward), port) = (&run.onward, run.resolved.port) else { return };
    let (Some(asked), Some(hands)) = (onward.port_power.get(), &port.passes_on) else { return };
    if asked <= hands.power.value {
        return;
    }
    let spec = run.resolved.run;
    let (wants, gives, over) = apart(asked, hands.power.value);
    let message = format!("end {}: {wants} asked of port `{}`, which hands on {gives}", sheet.name, port.id);
    let finding = found.report(&RULE, fed_at(spec), message, format!("{over} too much, its cable included"));
    finding.measured(asked, Worse::Higher);
    finding.because(at!(port.passes_on), "the most it hands on");
    let cable = (asked - onward.draw.get().unwrap_or_default()).rounded_up();
    let most = (hands.power.value - cable).rounded_down();
    finding.help(format!("a device of no more than {most}, or feed it from a supply of its own"));
}
