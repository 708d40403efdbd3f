//! The radio is grounded to an electrode that is not bonded to that of the building.

use crate::rules::prelude::*;

rule! {
    /// The radio is grounded to an electrode that is not bonded to that of the building.
    ///
    /// In a strike the two electrodes differ by many kilovolts, and the difference comes down the cable into the port. A
    /// separate rod that is left alone is worse than none. Bonding is the work of a licensed or competent person under the
    /// local code.
    ///
    /// Source: Kirchhoff's laws; NEC 810.21(J) asks for a bond of 6 AWG copper, IEC 60364-5-54 for main bonding of 6 mm²
    /// or more (from memory, not seen): check the edition adopted where you build.
    severity: Error,
    never_waived: PROTECTS_PEOPLE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, Some(earth)) = (sheet.resolved.end, sheet.resolved.earth) else { return };
    if earth.bonded != Some(false) {
        return;
    }
    let message =
        format!("end {}: earth point `{}` is not bonded to the electrode of the building", sheet.name, earth.id);
    let finding = found.report(&RULE, at!(end.grounding.bonds_to), message, "an electrode of its own");
    finding.because(at!(earth.bonded), "not bonded");
    finding.help("have the two electrodes bonded and say `bonded: true`, or bond to another earth point");
}
