//! The radio does not take this kind of supply.

use crate::rules::prelude::*;

rule! {
    /// The radio does not take this kind of supply.
    ///
    /// A fixed-voltage injector on a radio that expects detection can destroy it; a switch that detects gives a radio that
    /// answers nothing no power at all.
    ///
    /// Source: the kinds of supply on the radio's data sheet; IEEE 802.3-2022 clauses 33 and 145.
    severity: Error,
    never_waived: SHOCKS,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(supply) = run.resolved.supply.filter(|_| run.carries(Carried::Power)) else { return };
    let (spec, radio) = (run.resolved.run, sheet.resolved.radio);
    if radio.power.accepts.contains(&supply.standard) {
        return;
    }
    let takes: Vec<&str> = radio.power.accepts.iter().map(|standard| standard.word()).collect();
    let kind = supply.standard.word();
    let message = format!("end {}: radio `{}` takes no {kind} supply", sheet.name, radio.id);
    let finding = found.report(&RULE, at!(spec.supply), message, format!("of kind {kind}"));
    finding.because(at!(supply.standard), "its kind");
    finding.because(at!(radio.power.accepts), "what the radio takes");
    finding.help(format!("a supply of kind {}", takes.join(" or ")));
}
