//! Two runs hang on one port of a supply.

use crate::rules::prelude::*;

rule! {
    /// Two runs hang on one port of a supply.
    ///
    /// Runs that name the same `supply_unit` of the same model at a site hang on one supply; each takes a port of its own.
    /// What is found is told at the run that comes later.
    ///
    /// Source: a port takes one cable.
    severity: Error,
    waivable: SERVICE,
    check: End(check),
}

fn check(hop: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    for shared in &sheet.shared {
        let run = sheet.resolved.runs[shared.run].run;
        let Some(port) = &run.spec.supply_port else { continue };
        let own = (hop.resolved.hop.at, sheet.name, shared.run);
        let before =
            shared.feeds.iter().take_while(|feeds| (feeds.fellow.hop.hop.at, feeds.fellow.end.name, feeds.run) != own);
        for first in before {
            let other = first.fellow.end.runs[first.run].run;
            if other.spec.supply_port.as_ref() != Some(port) {
                continue;
            }
            let unit = run.spec.supply_unit.as_ref().map(ToString::to_string).unwrap_or_default();
            let (id, end) = (&first.fellow.hop.hop.id, first.fellow.end.name);
            let message =
                format!("end {}: port `{port}` of supply `{unit}` feeds `{id}`, end {end}, already", sheet.name);
            let finding = found.report(&RULE, at!(run.supply_port), message, "again here");
            finding.because(at!(other.supply_port), "first here");
            finding.help("take another port of the supply, or another supply");
            break;
        }
    }
}
