//! A port is asked to carry what it cannot.

use crate::rules::prelude::*;
use crate::spec::Duty;

rule! {
    /// A port is asked to carry what it cannot.
    ///
    /// Data on a port that is only there for DC, or power into a port that takes none: the crew finds a dead link after the
    /// cable is pulled and sealed.
    ///
    /// Source: the ports on the radio's data sheet.
    severity: Error,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, port, radio) = (run.resolved.run, run.resolved.port, sheet.resolved.radio);
    for (service, duty, word) in [(Service::Data, Duty::Data, "data"), (Service::Power, Duty::PowerIn, "power in")] {
        if !run.carries(service) || port.carries.contains(&duty) {
            continue;
        }
        let message = format!("end {}: port `{}` of radio `{}` carries no {word}", sheet.name, port.id, radio.id);
        let finding = found.report(&RULE, at!(spec.carries), message, format!("asks it for {word}"));
        finding.because(at!(spec.port), "this port");
        finding.because(at!(port.carries), "what it may carry");
        let able: Vec<&str> =
            radio.ports.iter().filter(|port| port.carries.contains(&duty)).map(|port| &*port.id).collect();
        finding.help(if able.is_empty() {
            format!("no port of this radio carries {word}")
        } else {
            format!("{word} goes to port {}", able.join(" or "))
        });
    }
}
