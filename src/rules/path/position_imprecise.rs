//! A position is written with too few digits for so narrow a beam.

use crate::rules::prelude::*;
use crate::units::Degrees;

rule! {
    /// A position is written with too few digits for so narrow a beam.
    ///
    /// Half of its last digit, seen from the other end, turns the bearing by more than a quarter of the narrower beamwidth. The
    /// bearings of both ends are then good for nothing but a first look, and a profile runs beside the path.
    ///
    /// Six decimals of a degree are a decimetre; give what the survey gave.
    ///
    /// Source: a quarter of the beamwidth costs 0.75 dB (12 dB × the square of the share, ITU-R F.699-8 main lobe); the limit
    /// is common practice.
    severity: Warning,
    waivable: WORK,
    check: Hop(check),
}

/// Share of the beamwidth that a bearing may be wrong by.
const SHARE: f64 = 0.25;

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let Both { a, b } = hop.resolved.ends.each_ref().map(|end| end.antenna);
    let narrower = if b.beamwidth.value < a.beamwidth.value { b } else { a };
    for (near, end) in hop.near.iter().zip(hop.ends.iter()) {
        let (Some(error), Some(turned)) = (near.lines.position_error.get(), near.lines.bearing_error.get()) else {
            continue;
        };
        let most = Degrees(narrower.beamwidth.value.0 * SHARE);
        if turned <= most {
            continue;
        }
        let site = end.resolved.site;
        let (has, wants, _) = apart(turned, most);
        let message = format!(
            "end {}: its last digits leave {error} open, {has} seen from the far end, over {wants}, a quarter of the beam",
            near.name
        );
        let finding = found.report(&RULE, at!(site.position), message, "to the last digit written");
        finding.measured(turned, Worse::Higher);
        finding.because(at!(narrower.beamwidth), "the narrower beam");
        finding.help("write all digits the survey gave: six decimals of a degree are a decimetre");
    }
}
