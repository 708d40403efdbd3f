//! A run hands power on, but nobody says what it feeds or what the port gives.

use crate::rules::prelude::*;

rule! {
    /// A run hands power on, but nobody says what it feeds or what the port gives.
    ///
    /// What hangs on a radio lowers the voltage at the radio, so it must be known: `feeds` of the run with a radio, or with
    /// draw and voltage, and `passes_on` of the port with its power and pairs.
    ///
    /// Source: Kirchhoff's laws; the ports on the radio's data sheet.
    severity: Error,
    never_waived: NOT_JUDGED,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, port) = (run.resolved.run, run.resolved.port);
    let feeds = &spec.feeds;
    let known = spec.ends_at.is_some() || feeds.radio.is_some() || feeds.draw.is_some() && feeds.voltage.is_some();
    let stated = feeds.radio.is_some() || feeds.draw.is_some() || feeds.voltage.is_some() || feeds.title.is_some();
    if !run.carries(Carried::PowerOut) {
        if stated {
            let message =
                format!("end {}: the run to port `{}` feeds something but carries no power out", sheet.name, port.id);
            let finding = found.report(&RULE, at!(spec.carries), message, "no `power-out` here");
            finding.known_at(at!(spec.port)).because(at!(spec.feeds), "what it feeds");
            finding.help("add `power-out` to what the run carries, or leave `feeds` out");
        }
        return;
    }
    if stated && spec.ends_at.is_some() {
        let message =
            format!("end {}: the run to port `{}` leads to a radio and is said to feed another", sheet.name, port.id);
        let finding = found.report(&RULE, at!(spec.feeds), message, "not where it leads");
        finding.known_at(at!(spec.port)).because(at!(spec.ends_at), "leads here");
        finding.help("leave `feeds` out: what it feeds is the radio it leads to");
    } else if !known {
        let message = format!("end {}: port `{}` hands power on, but to what is not said", sheet.name, port.id);
        let finding = found.report(&RULE, at!(spec.feeds), message, "draw and voltage, or a radio");
        finding.known_at(at!(spec.port)).because(at!(spec.carries), "carries power out");
        finding
            .help("add `feeds: { title: …, draw: 12 W, voltage: { min: 37 V, max: 57 V } }`, or `feeds: { radio: … }`, or name \
                 the port it leads to: `ends_at: { hop: …, end: a, port: … }`");
    } else if port.passes_on.is_none() && port.takes(Carried::PowerOut) {
        let message = format!("end {}: what port `{}` hands on is not said", sheet.name, port.id);
        let finding = found.report(&RULE, at!(port.passes_on), message, "power and pairs");
        finding.known_at(at!(spec.port)).because(at!(spec.carries), "carries power out");
        finding.help("add `passes_on: { power: 25 W, pairs: 2 }` from the radio's sheet");
    }
}
