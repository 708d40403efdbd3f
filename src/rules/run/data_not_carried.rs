//! No run of an end carries data.

use crate::rules::prelude::*;

rule! {
    /// No run of an end carries data.
    ///
    /// A hop whose end is connected to nothing moves nothing. The usual way there: a direct-current adapter takes the port
    /// that would have carried the data, and a port that is fed that way carries none.
    ///
    /// Source: the ports on the radio's data sheet.
    severity: Error,
    waivable: SERVICE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, radio) = (sheet.resolved.end, sheet.resolved.radio);
    let here = sheet.runs.iter().any(|run| run.carries(Carried::Data));
    if here || !sheet.fibre_runs.is_empty() || sheet.arrivals.iter().any(|arrival| arrival.brings(Carried::Data)) {
        return;
    }
    let message = format!("end {}: no run carries data to or from radio `{}`", sheet.name, radio.id);
    let taken = sheet.runs.iter().position(|run| run.resolved.port.takes(Carried::Data));
    let spot = taken.map_or_else(|| at!(end.runs), |i| at!(end.runs[i].carries));
    let label = if taken.is_some() { "takes a port for data, and brings none" } else { "none of them carries data" };
    let finding = found.report(&RULE, spot, message, label);
    finding.known_at(at!(end.radio));
    if let Some(supply) = taken.and_then(|i| sheet.runs[i].resolved.supply).filter(|supply| supply.rate.is_none()) {
        finding.because(at!(supply.rate), "an adapter that passes no data");
    }
    let arrives = |id: &str| sheet.arrivals.iter().any(|arrival| *arrival.port.id == *id);
    let fibred = |id: &str| sheet.fibre_runs.iter().any(|run| *run.resolved.port.id == *id);
    let arrives = |id: &str| arrives(id) || fibred(id);
    let used =
        |id: &str| arrives(id) || sheet.runs.iter().any(|run| &*run.resolved.port.id == id) || radio.reads_out_at(id);
    let free: Vec<&str> = radio
        .ports
        .iter()
        .filter(|port| port.takes(Carried::Data))
        .map(|port| &*port.id)
        .filter(|id| !used(id))
        .collect();
    finding.help(match (free.as_slice(), taken) {
        ([], Some(_)) => "add `data` to what this run carries, with a supply that passes data".into(),
        ([], None) => "no port is free for data: add `data` to a run whose port takes it".to_owned(),
        (free, _) => format!("add a run that carries data to port {}", free.join(" or ")),
    });
}
