//! An antenna stands in the beam of another one on the same support.

use super::antennas_too_near::{near, other_height};
use crate::rules::prelude::*;

rule! {
    /// An antenna stands in the beam of another one on the same support.
    ///
    /// Near the dish a beam is as wide as the dish. What stands in it takes level, turns polarisation and throws power where
    /// none is wanted. Beams follow their bearing and tilt; bodies are those of `antennas-collide`, which speaks first. What
    /// is found is told at the hop whose id comes later.
    ///
    /// Antennas on different supports of a site are not held against each other: where those stand is not known.
    ///
    /// Source: plane geometry; near field of an aperture (FCC OET Bulletin 65, from memory).
    severity: Warning,
    waivable: SERVICE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    for beside in sheet.others.iter().filter(|beside| beside.told_here) {
        if beside.lines.room.get().is_none_or(|room| room.0 < 0.0) {
            continue;
        }
        let (hop, end) = (&beside.fellow.hop.hop.id, beside.fellow.end.name);
        let message = match beside.in_beam.each_ref().map(|in_beam| in_beam.get() == Some(true)) {
            [true, _] => format!("end {}: the antenna of `{hop}`, end {end}, stands in its beam", sheet.name),
            [false, true] => format!("end {}: its antenna stands in the beam of `{hop}`, end {end}", sheet.name),
            [false, false] => continue,
        };
        let finding = near(&RULE, sheet, beside, message, found);
        finding.help(other_height(sheet, beside));
    }
}
