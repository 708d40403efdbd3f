//! No gland insert of the port seals on the cable.

use crate::rules::prelude::*;
use crate::spec::Gland;

rule! {
    /// No gland insert of the port seals on the cable.
    ///
    /// A cable thinner than the insert lets water in; a thicker one keeps the gland from closing.
    ///
    /// Source: the insert sizes on the radio's data sheet.
    severity: Error,
    waivable: EQUIPMENT,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, port, cable) = (run.resolved.run, run.resolved.port, run.resolved.cable);
    let diameter = cable.outside_diameter.value;
    // Of a range nobody knows which end it is: see `cable-diameter-open`.
    if cable.least_diameter.is_some() || port.glands.iter().any(|gland| gland.cable.holds(diameter)) {
        return;
    }
    // How far the cable is off the nearest edge of each insert.
    let off = |gland: &&Gland| {
        let window = &gland.cable;
        let limit = if diameter < window.min.value { window.min.value } else { window.max.value };
        (diameter - limit).0.abs()
    };
    let Some(nearest) = port.glands.iter().min_by(|one, other| off(one).total_cmp(&off(other))) else { return };
    let (limit, word) = if diameter < nearest.cable.min.value {
        (nearest.cable.min.value, "thinner")
    } else {
        (nearest.cable.max.value, "thicker")
    };
    let (has, seals, by) = apart(diameter, limit);
    let message = format!(
        "end {}: a cable of {has} does not seal in port `{}`: {by} {word} than the {seals} of {}",
        sheet.name, port.id, nearest.title
    );
    let finding = found.report(&RULE, at!(spec.cable), message, format!("{} across", cable.outside_diameter));
    let thin = diameter < nearest.cable.min.value;
    finding.measured(diameter, if thin { Worse::Lower } else { Worse::Higher });
    finding.because(at!(cable.outside_diameter), "its diameter");
    finding.because(at!(port.glands), "the inserts of the port");
    let windows: Vec<String> = port.glands.iter().map(|gland| format!("{} ({})", gland.cable, gland.title)).collect();
    finding.help(format!("a cable of {}", windows.join(" or ")));
}
