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
    let end = sheet.resolved.end;
    let radio = sheet.resolved.earth.map(|earth| (earth, at!(end.grounding.bonds_to), "the radio is grounded to it"));
    let entries = sheet.runs.iter().filter_map(|run| {
        let spec = run.resolved.run;
        Some((run.resolved.entry_earth?, at!(spec.entry_earth), "a cable enters beside it"))
    });
    let mut named = Vec::new();
    for (earth, place, label) in radio.into_iter().chain(entries) {
        if earth.bonded.is_some() || named.contains(&earth.id.to_string()) {
            continue;
        }
        named.push(earth.id.to_string());
        let message = format!(
            "end {}: whether earth point `{}` is bonded to that of the building is not said",
            sheet.name, earth.id
        );
        let finding = found.report(&RULE, at!(earth.bonded), message, "no `bonded` here");
        finding.because(place, label);
        finding.help("have a competent person look, and say `bonded: true` or `bonded: false`");
    }
}
