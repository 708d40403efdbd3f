//! The wind on a support is not judged, for nobody says how much of it an antenna catches.

use crate::rules::prelude::*;

rule! {
    /// The wind on a support is not judged, for nobody says how much of it an antenna catches.
    ///
    /// The climate states a wind, and the antenna no `wind_area`: neither the movement of the beam nor the stress at the foot
    /// of the pole is computed, and whoever is to confirm a mast or a wall is given no force. The area is on the antenna's
    /// data sheet.
    ///
    /// Source: common practice, no source; what is computed from it is named at its lines.
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (lines, dish) = (&sheet.wind, sheet.resolved.antenna);
    let windy = lines.pressure.get().is_some() || lines.survival_pressure.get().is_some();
    if !windy || dish.wind_area.is_some() {
        return;
    }
    // Said of the antenna: however many supports carry one, its sheet has to be looked at once.
    let message = format!("antenna `{}`: without its wind area the wind on what carries it is not judged", dish.id);
    let finding = found.report(&RULE, at!(dish.wind_area), message, "no `wind_area` here");
    finding.help("add `wind_area:` to the antenna from its data sheet");
}
