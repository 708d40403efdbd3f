//! A supply for indoors stands in the weather.

use crate::rules::prelude::*;
use crate::spec::{Location, Shelter};

rule! {
    /// A supply for indoors stands in the weather.
    ///
    /// Water and mains do not go together: it fails, and it can kill. Put it indoors or in a box of IP65 or better, or take
    /// one that is made for outdoors. Mains work is for a licensed or competent person under the local code.
    ///
    /// Source: where the supply may stand, on its data sheet; IP code by IEC 60529.
    severity: Error,
    never_waived: SHOCKS,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (Some(supply), Some(point)) = (run.resolved.supply, run.resolved.power_point) else { return };
    if supply.location == Location::Outdoor || point.place != Shelter::Outdoor {
        return;
    }
    let spec = run.resolved.run;
    let message = format!("end {}: supply `{}` is for indoors and stands outdoors", sheet.name, supply.id);
    let finding = found.report(&RULE, at!(spec.supply), message, "only for indoors");
    finding.because(at!(supply.location), "where it may stand");
    finding.because(at!(point.place), format!("power point `{}` is in the weather", point.id));
    finding.help("a supply for outdoors, or a box of IP65 or better (`place: box` of the power point)");
}
