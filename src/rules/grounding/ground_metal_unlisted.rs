//! The code in force lists no size for the metal of the grounding conductor.

use crate::rules::prelude::*;

rule! {
    /// The code in force lists no size for the metal of the grounding conductor.
    ///
    /// Grounding is the work of a licensed or competent person under the local code, which this program does not replace.
    ///
    /// Source: NEC 810.21 has copper, aluminium and copper-clad steel, no galvanised steel (from memory, not seen): check
    /// the edition adopted where you build.
    severity: Warning,
    never_waived: PROTECTS_PEOPLE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, Some(code)) = (sheet.resolved.end, sheet.code) else { return };
    if end.grounding.conductor.is_none() || code.least.is_some() {
        return;
    }
    let metal = end.grounding.material.words();
    let message = format!("end {}: {} lists no size of {metal} for a grounding conductor", sheet.name, code.name);
    let finding = found.report(&RULE, at!(end.grounding.material), message, "not listed");
    finding.because(code.place, "the code in force");
    finding.help("`material: copper`, or ask the authority that enforces the code");
}
