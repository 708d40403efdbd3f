//! Nothing powers the radio.

use crate::rules::prelude::*;
use crate::sheet::{Arrival, Reason};

rule! {
    /// Nothing powers the radio.
    ///
    /// One run of each end must carry power and name the supply that feeds it, unless another radio hands it power over a run
    /// that `ends_at` its port. Radios that hand power to each other in a circle have none.
    ///
    /// Source: the radio's data sheet.
    severity: Error,
    waivable: SERVICE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let end = sheet.resolved.end;
    if let Some(arrival) = sheet.arrivals.iter().find(|arrival| arrival.brings(Carried::Power)) {
        return circle(sheet, arrival, found);
    }
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

/// A radio that another one feeds has power, unless the way comes back to it.
fn circle(sheet: &EndSheet<'_>, arrival: &Arrival<'_>, found: &mut Findings) {
    let end = sheet.resolved.end;
    let circled = arrival.lines.voltage.value().err().filter(|missing| missing.reason == Reason::PowerInACircle);
    let own = sheet.runs.iter().any(|run| run.carries(Carried::Power) && run.resolved.supply.is_some());
    if circled.is_none() || own {
        return;
    }
    let run = arrival.from.fellow.end.runs[arrival.from.run].run;
    let message = format!("end {}: radio `{}` is fed in a circle, by no supply", sheet.name, sheet.resolved.radio.id);
    let finding = found.report(&RULE, at!(run.ends_at), message, "fed from there");
    finding.known_at(at!(end.radio)).help("give one radio of the circle a supply of its own");
}
