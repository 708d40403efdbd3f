//! Nobody says where a supply stands and takes its power.

use crate::rules::prelude::*;

rule! {
    /// Nobody says where a supply stands and takes its power.
    ///
    /// The crew must find the socket, the breaker and the person who may switch it; and whether the supply is out of the
    /// weather depends on where it stands.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    never_waived: PROTECTS_PEOPLE,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let spec = run.resolved.run;
    if run.resolved.supply.is_none() || spec.power_point.is_some() {
        return;
    }
    let site = sheet.resolved.site;
    let message = format!("end {}: the supply of the run to port `{}` stands nowhere", sheet.name, spec.port);
    let finding = found.report(&RULE, at!(spec.power_point), message, "stands where?");
    finding.because(at!(spec.supply), "this supply");
    let points: Vec<&str> = site.power.iter().map(|point| &*point.id).collect();
    finding.help(if points.is_empty() {
        format!("give site `{}` a point under `power`, and name it in `power_point`", site.id)
    } else {
        format!("add `power_point:` and one of: {}", points.join(", "))
    });
}
