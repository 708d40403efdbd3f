//! Nothing powers the radio.

use crate::rules::prelude::*;

rule! {
    /// Nothing powers the radio.
    ///
    /// One run of each end must carry power and name the supply that feeds it.
    ///
    /// Source: the radio's data sheet.
    severity: Error,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let end = sheet.resolved.end;
    if sheet.runs.iter().any(|run| run.carries(Service::Power) && run.resolved.supply.is_some()) {
        return;
    }
    let message = format!("end {}: no run brings power to radio `{}`", sheet.name, sheet.resolved.radio.id);
    let finding = found.report(&RULE, at!(end.runs), message, "none of them carries power from a supply");
    finding.help("give one run `carries: [data, power]` and a `supply`");
}
