//! Nobody says where the grounding conductor bonds.

use crate::rules::prelude::*;

rule! {
    /// Nobody says where the grounding conductor bonds.
    ///
    /// The crew must know the earth point before it climbs: one that is not bonded to the rest of the site's earth is worse
    /// than none.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    never_waived: PROTECTS_PEOPLE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, site) = (sheet.resolved.end, sheet.resolved.site);
    if end.grounding.conductor.is_none() || end.grounding.bonds_to.is_some() {
        return;
    }
    let message = format!("end {}: the grounding conductor bonds to no stated earth point", sheet.name);
    let finding = found.report(&RULE, at!(end.grounding.bonds_to), message, "bonds where?");
    let points: Vec<&str> = site.earth.iter().map(|point| &*point.id).collect();
    finding.help(if points.is_empty() {
        format!("give site `{}` an earth point, and name it in `bonds_to`", site.id)
    } else {
        format!("add `bonds_to:` and one of: {}", points.join(", "))
    });
}
