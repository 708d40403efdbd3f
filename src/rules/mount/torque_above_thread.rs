//! A screw is to be tightened harder than it bears.

use crate::rules::prelude::*;

rule! {
    /// A screw is to be tightened harder than it bears.
    ///
    /// A stainless screw of class 70 with a dry thread comes to two thirds of its proof load at a certain torque; beyond it
    /// the screw, or the casting below, gives. More likely the figure is of another thread or in another unit.
    ///
    /// Source: T = K d F with K = 0.20 and 65 % of the proof load, common practice; stress areas by ISO 898-1 and proof
    /// stress by ISO 3506-1 (from memory). The maker's own torque rules.
    severity: Warning,
    never_waived: FALLS,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let bracket = sheet.resolved.bracket;
    for (i, fastener) in bracket.fasteners.iter().enumerate() {
        let Some(most) = crate::sheet::greatest_torque(&fastener.thread) else { continue };
        if fastener.torque.value <= most {
            continue;
        }
        let (has, limit, by) = apart(fastener.torque.value, most);
        let message = format!(
            "bracket `{}`: {has} for {} of {}, {by} more than the {limit} such a screw bears",
            bracket.id, fastener.title, fastener.thread
        );
        let finding = found.report(&RULE, at!(bracket.fasteners[i].torque), message, "more than it bears");
        finding.measured(fastener.torque.value, Worse::Higher);
        finding.because(at!(bracket.fasteners[i].thread), "this thread");
        finding.help("check thread, figure and unit on the maker's sheet");
    }
}
