//! The wind on a support is not judged, for nobody says how much of it an antenna catches.

use crate::rules::prelude::*;
use crate::sheet::{Missing, Reason};

rule! {
    /// The wind on a support is not judged, for nobody says how much of it an antenna catches.
    ///
    /// The climate states a wind, and the antenna no `wind_area`: neither the movement of the beam nor the stress at the foot
    /// of the pole is computed, and whoever is to confirm a mast or a wall is given no force. The area is on the antenna's
    /// data sheet. What other hops put on the same support counts as much: one antenna without an area leaves all of it
    /// unjudged. So does a support that carries more than a hundred others.
    ///
    /// Source: common practice, no source; what is computed from it is named at its lines.
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let lines = &sheet.wind;
    let windy = lines.pressure.get().is_some() || lines.survival_pressure.get().is_some();
    if !windy {
        return;
    }
    if let Err(Missing { reason: Reason::Crowded { most }, .. }) = lines.company.value() {
        let (end, support) = (sheet.resolved.end, sheet.resolved.support);
        let message = format!(
            "`{}` carries more than {most} other antennas: the wind on them together is not judged",
            support.id
        );
        let finding = found.report(&RULE, at!(end.support), message, "one of them");
        finding.help("write the tubes that stand there as supports of their own");
        return;
    }
    // Said of the antenna: however many supports carry one, its sheet has to be looked at once.
    let fellows = sheet.beside.iter().map(|fellow| fellow.end.antenna);
    let dishes = std::iter::once(sheet.resolved.antenna).chain(fellows).filter(|dish| dish.wind_area.is_none());
    let mut told = Vec::new();
    for dish in dishes {
        if told.contains(&dish.at) {
            continue;
        }
        told.push(dish.at);
        let message = format!("antenna `{}`: without its wind area the wind on what carries it is not judged", dish.id);
        let finding = found.report(&RULE, at!(dish.wind_area), message, "no `wind_area` here");
        finding.help("add `wind_area:` to the antenna from its data sheet");
    }
}
