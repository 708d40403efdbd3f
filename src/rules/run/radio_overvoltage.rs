//! The supply gives more volts than the radio takes.

use crate::rules::prelude::*;

rule! {
    /// The supply gives more volts than the radio takes.
    ///
    /// With little current flowing nearly all of the supply's voltage arrives. Above its window a radio is damaged.
    ///
    /// Source: the voltage window on the radio's data sheet; 57 V is the most at any IEEE 802.3 port.
    severity: Error,
    never_waived: SHOCKS,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(supply) = run.resolved.supply.filter(|_| run.carries(Carried::Power)) else { return };
    let (spec, radio) = (run.resolved.run, sheet.resolved.radio);
    let (gives, most) = (supply.voltage.max.value, radio.power.voltage.max.value);
    if gives <= most {
        return;
    }
    let (has, limit, above) = apart(gives, most);
    let message =
        format!("end {}: the supply gives up to {has}, {above} above the {limit} the radio takes", sheet.name);
    let finding = found.report(&RULE, at!(spec.supply), message, format!("up to {has}"));
    finding.measured(gives, Worse::Higher);
    finding.because(at!(supply.voltage.max), "its greatest voltage");
    finding.because(at!(radio.power.voltage.max), "the most the radio takes");
    finding.help(format!("a supply of no more than {}", radio.power.voltage.max));
}
