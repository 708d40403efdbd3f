//! A fibre is longer than its pluggables reach, or loses more than they bear.

use crate::rules::prelude::*;

rule! {
    /// A fibre is longer than its pluggables reach, or loses more than they bear.
    ///
    /// Each interface reaches so far over each kind of fibre and no farther, and bears so much loss: that of the fibre, of each
    /// pair of connectors mated on the way, and of each splice. The connectors in the pluggables are counted already.
    ///
    /// Source: IEEE 802.3-2022, clauses 38, 52, 59, 112 and 114; ANSI/TIA-568.3-D for the losses (second-hand and from memory).
    severity: Error,
    waivable: SERVICE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    for fibre in &sheet.fibre_runs {
        let (run, cable, lines) = (fibre.resolved.run, fibre.resolved.fibre, &fibre.lines);
        let (end, port) = (sheet.name, &run.spec.port);
        let interface = run.here.interface.word();
        if let (Some(length), Some(reach)) = (lines.length.get(), lines.reach.get())
            && length > reach
        {
            let (has, limit, over) = apart(length, reach);
            let category = cable.category.word();
            let message = format!(
                "end {end}: the fibre to port `{port}` is {has}, {over} beyond the {limit} of {interface} on {category}"
            );
            let finding = found.report(&RULE, at!(run.outdoor), message, "too long");
            finding.about("length").measured(length, Worse::Higher);
            finding.because(at!(run.here.interface), "this interface");
            finding.because(at!(cable.category), "over this fibre");
            finding.help("take pluggables that reach farther on both ends, or a better fibre");
        }
        if let (Some(loss), Some(most)) = (lines.loss.get(), lines.most_loss.get())
            && loss > most
        {
            let (has, bears, over) = apart(loss, most);
            let message = format!(
                "end {end}: the fibre to port `{port}` takes {has}, {over} more than the {bears} that {interface} bears"
            );
            let finding = found.report(&RULE, at!(run.fibre), message, "takes too much of the light");
            finding.about("loss").measured(loss, Worse::Higher);
            finding.because(at!(run.here.interface), "this interface");
            finding.help("fewer joints on the way, or pluggables that bear more on both ends");
        }
    }
}
