//! The run asks more power of the supply than it gives.

use crate::rules::prelude::*;

rule! {
    /// The run asks more power of the supply than it gives.
    ///
    /// What the supply hands over is the radio's draw and what the cable loses on the way. Past its limit a port shuts
    /// down, often only after the crew has left.
    ///
    /// Source: the power on the supply's data sheet; classes of IEEE 802.3-2022 clauses 33 and 145.
    severity: Error,
    never_waived: SHOCKS,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (Some(asked), Some(supply)) = (run.lines.supply_power.get(), run.resolved.supply) else { return };
    let (spec, radio) = (run.resolved.run, sheet.resolved.radio);
    if asked <= supply.power.value {
        return;
    }
    let (wants, gives, short) = apart(asked, supply.power.value);
    let message = format!("end {}: {wants} asked of a supply that gives {gives}", sheet.name);
    let finding = found.report(&RULE, at!(spec.supply), message, format!("{short} too little"));
    finding.measured(asked, Worse::Higher);
    finding.because(at!(supply.power), "the most it gives");
    finding.because(at!(radio.power.draw), "the most the radio draws; the cable loses the rest");
    finding.help(format!("a supply of {} or more", asked.rounded_up()));
}
