//! Nobody has written down what can hurt a crew at a site.

use crate::rules::prelude::*;

rule! {
    /// Nobody has written down what can hurt a crew at a site.
    ///
    /// The install pack then says `not assessed`, which is not the same as safe. Walk the site with its owner and list what
    /// there is under `hazards`: edges, roofs that do not bear, power, ropes, ice, traffic, animals. Where there is nothing,
    /// say who looked and when.
    ///
    /// Source: common practice, no source.
    severity: Advice,
    never_waived: PROTECTS_PEOPLE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let site = sheet.resolved.site;
    if !site.hazards.is_empty() {
        return;
    }
    let message = format!("site `{}`: what can hurt a crew is not assessed", site.id);
    let finding = found.report(&RULE, at!(site.hazards), message, "no `hazards` at this site");
    finding.help("list `hazards`; where there are none, say who looked and when");
}
