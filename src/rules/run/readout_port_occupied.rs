//! A cable occupies the port the meter is put on for aligning.

use crate::rules::prelude::*;
use crate::spec::Port;

rule! {
    /// A cable occupies the port the meter is put on for aligning.
    ///
    /// The crew aligns by the voltage at that port. With a cable sealed into it there is nothing to read.
    ///
    /// Source: the read-out on the radio's data sheet.
    severity: Error,
    waivable: WORK,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, radio) = (run.resolved.run, sheet.resolved.radio);
    let Some(readout) = sheet.resolved.readout().filter(|readout| readout.port == spec.port) else { return };
    let message = format!("end {}: the run occupies port `{}`, where the meter is read", sheet.name, spec.port);
    let finding = found.report(&RULE, at!(spec.port), message, "needed for aligning");
    finding.because(at!(readout.port), "the read-out is here");
    let able = |port: &&Port| spec.carries.iter().all(|service| port.takes(*service));
    let other = radio.ports.iter().filter(|port| port.id != readout.spec.port).filter(able);
    let other: Vec<&str> = other.map(|port| &*port.id).collect();
    finding.help(if other.is_empty() {
        "no other port of this radio takes what the run carries".into()
    } else {
        format!("use port {}", other.join(" or "))
    });
}
