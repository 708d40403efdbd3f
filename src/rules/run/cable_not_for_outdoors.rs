//! An indoor cable is used outdoors.

use crate::rules::prelude::*;
use crate::spec::Jacket;

rule! {
    /// An indoor cable is used outdoors.
    ///
    /// Its jacket cracks in the sun within a season or two, and water runs down the conductors into the radio.
    ///
    /// Source: the jacket on the cable's data sheet.
    severity: Error,
    waivable: EQUIPMENT,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, cable) = (run.resolved.run, run.resolved.cable);
    if spec.outdoor.value.0 <= 0.0 || cable.jacket == Jacket::Outdoor {
        return;
    }
    let message = format!("end {}: indoor cable `{}` for {} outdoors", sheet.name, cable.id, spec.outdoor);
    let finding = found.report(&RULE, at!(spec.cable), message, "not for outdoors");
    finding.measured(spec.outdoor.value, Worse::Higher);
    finding.because(at!(cable.jacket), "its jacket");
    finding.because(at!(spec.outdoor), "this much of it is outdoors");
    finding.help("take a cable with a UV-stable outdoor jacket");
}
