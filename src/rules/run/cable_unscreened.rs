//! An outdoor cable has no screen.

use crate::rules::prelude::*;
use crate::spec::Construction;

rule! {
    /// An outdoor cable has no screen.
    ///
    /// On a mast, roof or wall the screen, bonded at both ends, keeps surges of nearby lightning out of the ports. Choose
    /// F/UTP or better.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    waivable: EQUIPMENT,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, cable) = (run.resolved.run, run.resolved.cable);
    if spec.outdoor.value.0 <= 0.0 || cable.has_screen() || cable.construction == Construction::TwoCore {
        return;
    }
    let message = format!("end {}: {} of unscreened cable outdoors", sheet.name, spec.outdoor);
    let finding = found.report(&RULE, at!(spec.cable), message, "has no screen");
    finding.measured(spec.outdoor.value, Worse::Higher);
    finding.because(at!(spec.outdoor), "this much of it is outdoors");
    finding.because(at!(cable.screening), "unscreened");
    finding.help("take F/UTP or better, with metal plugs and the screen bonded at both ends");
}
