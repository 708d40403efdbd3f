//! Nothing powers the radio.

use crate::rules::prelude::*;

rule! {
    /// Nothing powers the radio.
    ///
    /// One run of each end must carry power and name the supply that feeds it.
    ///
    /// Source: the radio's data sheet.
    severity: Error,
    waivable: SERVICE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let end = sheet.resolved.end;
    let mut unfed = None;
    let mut unused = None;
    for (i, run) in sheet.runs.iter().enumerate() {
        match (run.carries(Carried::Power), run.resolved.supply) {
            (true, Some(_)) => return,
            (true, None) => unfed = unfed.or(Some(i)),
            (false, Some(_)) => unused = unused.or(Some(i)),
            (false, None) => {}
        }
    }
    let message = format!("end {}: no run brings power to radio `{}`", sheet.name, sheet.resolved.radio.id);
    let (spot, label, help) = match (unfed, unused) {
        (Some(i), _) => (
            at!(end.runs[i].supply),
            "carries power, but from no supply",
            format!("name the supply of the run to port `{}` in `supply:`", end.spec.runs[i].port),
        ),
        (None, Some(i)) => (
            at!(end.runs[i].carries),
            "has a supply, but carries no power",
            format!("add `power` to what the run to port `{}` carries", end.spec.runs[i].port),
        ),
        (None, None) => (
            at!(end.runs),
            "none of them carries power from a supply",
            "give one run `carries: [data, power]` and a `supply`".into(),
        ),
    };
    found.report(&RULE, spot, message, label).known_at(at!(end.radio)).help(help);
}
