//! Two runs end at the same port.

use crate::rules::prelude::*;

rule! {
    /// Two runs end at the same port.
    ///
    /// Source: a port takes one cable.
    severity: Error,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let end = sheet.resolved.end;
    let runs = &end.spec.runs;
    for i in 0..runs.len() {
        let Some(j) = runs[..i].iter().position(|earlier| earlier.port == runs[i].port) else { continue };
        let message = format!("end {}: two runs end at port `{}`", sheet.name, runs[i].port);
        let finding = found.report(&RULE, at!(end.runs[i].port), message, "again here");
        finding.because(at!(end.runs[j].port), "first here");
        let free: Vec<&str> =
            sheet.resolved.radio.ports.iter().map(|port| &*port.id).filter(|id| *id != &*runs[i].port).collect();
        finding.help(format!("the radio also has: {}", free.join(", ")));
    }
}
