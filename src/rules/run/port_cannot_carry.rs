//! A port is asked to carry what it cannot.

use crate::rules::prelude::*;

rule! {
    /// A port is asked to carry what it cannot.
    ///
    /// Data on a port that is only there for DC, or power into a port that takes none: the crew finds a dead link after the
    /// cable is pulled and sealed.
    ///
    /// Source: the ports on the radio's data sheet.
    severity: Error,
    never_waived: SHOCKS,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, port, radio) = (run.resolved.run, run.resolved.port, sheet.resolved.radio);
    for (service, word) in [(Carried::Data, "data"), (Carried::Power, "power"), (Carried::PowerOut, "power out")] {
        if !run.carries(service) || port.takes(service) {
            continue;
        }
        let message = format!("end {}: port `{}` of radio `{}` takes no {word}", sheet.name, port.id, radio.id);
        let finding = found.report(&RULE, at!(spec.carries), message, format!("asks it for {word}"));
        finding.about(word).because(at!(spec.port), "this port");
        finding.because(at!(port.carries), "what it takes");
        let able = radio.ports.iter().filter(|port| port.takes(service));
        let able: Vec<&str> = able.map(|port| &*port.id).collect();
        finding.help(if able.is_empty() {
            format!("no port of this radio takes {word}")
        } else {
            format!("{word} goes to port {}", able.join(" or "))
        });
    }
}
