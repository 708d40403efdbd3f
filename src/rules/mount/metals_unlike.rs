//! Two metals that eat each other touch out of doors.

use crate::rules::prelude::*;

rule! {
    /// Two metals that eat each other touch out of doors.
    ///
    /// Where unlike metals touch and get wet, the less noble one is eaten, and with it the clamp or the pole. Put a washer,
    /// a sleeve or joint compound between them, or take a bracket of the metal of the pole. A small stainless part on a
    /// large galvanised one does little harm and is not reported.
    ///
    /// Painted steel has no index: while the coat is whole no current flows. Paint the nobler side or both, and earth it on
    /// bare metal.
    ///
    /// Source: anodic indices from handbooks (second-hand). The limit of 0.25 V is common practice, no source: the handbooks
    /// ask for 0.15 V out of doors, in damp or salt air, which would condemn an aluminium clamp on zinc.
    severity: Warning,
    waivable: EQUIPMENT,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, bracket, support) = (sheet.resolved.end, sheet.resolved.bracket, sheet.resolved.support);
    let (Some(metals), Some(one), Some(other)) = (&sheet.metals, bracket.material, support.material) else { return };
    let (has, limit, by) = apart(metals.apart, metals.allowed);
    let message =
        format!("end {}: {} and {} lie {has} apart, {by} more than {limit}", sheet.name, one.word(), other.word());
    let finding = found.report(&RULE, at!(end.bracket.model), message, format!("a bracket of {}", one.word()));
    finding.measured(metals.apart, Worse::Higher);
    finding.because(at!(bracket.material), "of the bracket");
    finding.because(at!(support.material), "of the support");
    finding.help(format!("isolate them, use joint compound, or take a bracket of {}", other.word()));
}
