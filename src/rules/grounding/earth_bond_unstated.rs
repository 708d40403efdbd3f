//! Nobody says whether an earth point is bonded to the electrode of the building.

use crate::rules::prelude::*;

rule! {
    /// Nobody says whether an earth point is bonded to the electrode of the building.
    ///
    /// Of an earth point that is not bonded a rule of its own speaks, and it is an error. Where `bonded` is not written,
    /// nobody has looked: in a strike the difference between two electrodes comes down the cable into the port. It is asked of
    /// the point the radio is grounded to and of those at the entries of its cables.
    ///
    /// Source: Kirchhoff's laws; NEC 810.21(J) and IEC 60364-5-54 (from memory, not seen).
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let site = sheet.resolved.site;
    let entries = sheet.runs.iter().filter_map(|run| run.resolved.entry_earth);
    let mut named = Vec::new();
    for earth in sheet.resolved.earth.into_iter().chain(entries) {
        let id = earth.id.to_string();
        if earth.bonded.is_some() || named.contains(&id) {
            continue;
        }
        // Said of the site: however many hops bond there, somebody has to look once.
        let message =
            format!("site `{}`: whether earth point `{id}` is bonded to that of the building is not said", site.id);
        named.push(id);
        let finding = found.report(&RULE, at!(earth.bonded), message, "no `bonded` here");
        finding.help("have a competent person check, and say `bonded: true` or `bonded: false`");
    }
}
