//! Two antennas take the same place on a support.

use super::antennas_too_near::{near, other_height};
use crate::rules::prelude::*;

rule! {
    /// Two antennas take the same place on a support.
    ///
    /// Each is taken as a box in front of the tube: as wide and as tall as its dish, 250 mm and a quarter of the diameter
    /// deep, turned into its bearing. A dish without `diameter` has that of an aperture of its gain. An offset to the side is
    /// not counted, for on which side is nowhere written. What is found is told at the hop whose id comes later.
    ///
    /// Antennas on different supports of a site are not held against each other: where those stand is not known.
    ///
    /// Source: plane geometry; the depth is common practice, no source.
    severity: Error,
    waivable: SERVICE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    for beside in sheet.others.iter().filter(|beside| beside.told_here) {
        let Some(room) = beside.lines.room.get().filter(|room| room.0 < 0.0) else { continue };
        let (hop, end) = (&beside.fellow.hop.hop.id, beside.fellow.end.name);
        let into = Millimetres(-room.0);
        let message = format!(
            "end {}: its antenna and that of `{hop}`, end {end}, overlap by {into} on the same support",
            sheet.name
        );
        let finding = near(&RULE, sheet, beside, message, found);
        finding.measured(into, Worse::Higher);
        finding.help(other_height(sheet, beside));
    }
}
