//! A cable occupies the port the meter is put on for aligning.

use crate::rules::prelude::*;

rule! {
    /// A cable occupies the port the meter is put on for aligning.
    ///
    /// The crew aligns by the voltage at that port. With a cable sealed into it there is nothing to read.
    ///
    /// Source: the read-out on the radio's data sheet.
    severity: Error,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, radio) = (run.resolved.run, sheet.resolved.radio);
    if *spec.port != *radio.readout.port {
        return;
    }
    let message = format!("end {}: the run occupies port `{}`, where the meter is read", sheet.name, spec.port);
    let finding = found.report(&RULE, at!(spec.port), message, "needed for aligning");
    finding.because(at!(radio.readout.port), "the read-out is here");
    let free: Vec<&str> = radio.ports.iter().map(|port| &*port.id).filter(|id| *id != &*radio.readout.port).collect();
    finding.help(format!("use port {}", free.join(" or ")));
}
