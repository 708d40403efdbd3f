//! The clamp of the bracket does not close on the support.

use crate::rules::prelude::*;

rule! {
    /// The clamp of the bracket does not close on the support.
    ///
    /// The clamp goes by the true outside diameter of the tube, not by its nominal size: pipe of nominal 2 in is 60.3 mm
    /// across (ASME B36.10M).
    ///
    /// Source: the clamp range on the bracket's data sheet.
    severity: Error,
    never_waived: FALLS,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, bracket, support) = (sheet.resolved.end, sheet.resolved.bracket, sheet.resolved.support);
    let diameter = support.outside_diameter.value;
    if bracket.pole.holds(diameter) {
        return;
    }
    let limit = if diameter < bracket.pole.min.value { &bracket.pole.min } else { &bracket.pole.max };
    let (has, allows, off) = apart(diameter, limit.value);
    let word = if diameter < limit.value { "thinner" } else { "thicker" };
    let message = format!(
        "end {}: {} `{}` of {has} is {off} {word} than the {allows} the clamp takes",
        sheet.name,
        support.kind.word(),
        support.id
    );
    let finding = found.report(&RULE, at!(end.bracket.model), message, format!("its clamp takes {}", bracket.pole));
    finding.measured(diameter, if diameter < limit.value { Worse::Lower } else { Worse::Higher });
    finding.because(at!(support.outside_diameter), format!("{has} across"));
    finding.because(at!(bracket.pole), "the range of the clamp");
    finding.help(format!("take a bracket whose clamp takes {}, or another support", support.outside_diameter));
}
