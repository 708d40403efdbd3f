//! A run leads to a port of another radio that cannot take it.

use crate::rules::prelude::*;
use crate::sheet::Arrival;
use crate::spec::Duty;

rule! {
    /// A run leads to a port of another radio that cannot take it.
    ///
    /// A run between two radios is written at one of them and ends at a port of the other (`ends_at`). That port must be free,
    /// must take the data or the power that comes over it, and must not be the one the meter is put on.
    ///
    /// Source: the ports on the radio's data sheet.
    severity: Error,
    waivable: SERVICE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    for (number, arrival) in sheet.arrivals.iter().enumerate() {
        for (what, label) in wrong(sheet, number, arrival) {
            let run = arrival.from.fellow.end.runs[arrival.from.run].run;
            let from = arrival.from.fellow.hop.hop;
            let message =
                format!("end {}: the run from hop `{}` to port `{}` {what}", sheet.name, from.id, arrival.port.id);
            let finding = found.report(&RULE, at!(run.ends_at), message, "leads there");
            let port = arrival.port;
            finding.about(label).because(at!(port.carries), label);
            finding.help("connect it to a port that takes it, or change what the run carries");
        }
    }
}

/// What is wrong with a run that comes in, in words, and what of the port says so.
fn wrong(sheet: &EndSheet<'_>, number: usize, arrival: &Arrival<'_>) -> Vec<(&'static str, &'static str)> {
    let (port, radio) = (arrival.port, sheet.resolved.radio);
    let mut wrong = Vec::new();
    if arrival.brings(Carried::Data) && !port.carries.contains(&Duty::Data) {
        wrong.push(("brings data that the port does not take", "takes no data"));
    }
    if arrival.brings(Carried::Power) && !port.carries.contains(&Duty::PowerIn) {
        wrong.push(("brings power that the port does not take", "takes no power"));
    }
    if arrival.brings(Carried::PowerOut) {
        wrong.push((
            "is said to be fed from here: write it at this radio, carrying `power-out`",
            "would have to hand it on",
        ));
    }
    if radio.reads_out_at(&port.id) {
        wrong.push(("occupies the port where the meter is read", "needed for aligning"));
    }
    let own = sheet.runs.iter().any(|run| run.resolved.port.id == port.id);
    let other = sheet.arrivals[..number].iter().any(|other| other.port.id == port.id);
    let fibre = sheet.fibre_runs.iter().any(|run| run.resolved.port.id == port.id);
    if own || other || fibre {
        wrong.push(("comes to a port where another run ends", "a port takes one cable"));
    }
    wrong
}
