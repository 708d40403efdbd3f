//! No gland insert of the port seals on the cable.

use crate::rules::prelude::*;

rule! {
    /// No gland insert of the port seals on the cable.
    ///
    /// A cable thinner than the insert lets water in; a thicker one keeps the gland from closing.
    ///
    /// Source: the insert sizes on the radio's data sheet.
    severity: Error,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, port, cable) = (run.resolved.run, run.resolved.port, run.resolved.cable);
    let diameter = cable.outside_diameter.value;
    if port.glands.is_empty() || port.glands.iter().any(|gland| gland.cable.holds(diameter)) {
        return;
    }
    let windows: Vec<String> = port.glands.iter().map(|gland| format!("{} ({})", gland.cable, gland.title)).collect();
    let message =
        format!("end {}: a cable of {} does not seal in port `{}`", sheet.name, cable.outside_diameter, port.id);
    let finding = found.report(&RULE, at!(spec.cable), message, format!("{} across", cable.outside_diameter));
    finding.because(at!(cable.outside_diameter), "its diameter");
    finding.because(at!(port.glands), format!("seals {}", windows.join(", ")));
    finding.help(format!("a cable of {}", windows.join(" or ")));
}
