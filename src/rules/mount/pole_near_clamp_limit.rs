//! The diameter of the support is close to the limit of the clamp.

use crate::rules::prelude::*;
use crate::units::Millimetres;

rule! {
    /// The diameter of the support is close to the limit of the clamp.
    ///
    /// Tubes are made to a tolerance, zinc and paint add to them, and clamps at the end of their travel hold badly. Within
    /// 2 mm of either end, measure the tube before the bracket is ordered.
    ///
    /// Source: common practice, no source.
    severity: Advice,
    waivable: WORK,
    check: End(check),
}

/// Nearer to the end of the range than this is near.
const NEAR: Millimetres = Millimetres(2.0);

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, bracket, support) = (sheet.resolved.end, sheet.resolved.bracket, sheet.resolved.support);
    let diameter = support.outside_diameter.value;
    let (below, above) = (diameter - bracket.pole.min.value, bracket.pole.max.value - diameter);
    let left = if below < above { below } else { above };
    if left.0 < 0.0 || left >= NEAR {
        return;
    }
    let message =
        format!("end {}: {} lies {left} from the end of what the clamp takes", sheet.name, support.outside_diameter);
    let finding = found.report(&RULE, at!(end.bracket.model), message, format!("its clamp takes {}", bracket.pole));
    finding.measured(left, Worse::Lower);
    finding.because(at!(support.outside_diameter), format!("{diameter} across, as written"));
    finding.because(at!(bracket.pole), "the range of the clamp");
    finding.help("measure the tube, zinc and paint included, before the bracket is ordered");
}
