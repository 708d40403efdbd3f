//! A screened outdoor cable has plastic plugs.

use crate::rules::prelude::*;
use crate::spec::Plugs;

rule! {
    /// A screened outdoor cable has plastic plugs.
    ///
    /// The screen ends in the air and protects nothing: only a plug with a metal shell, crimped onto the screen, takes it to
    /// the case of the radio and to the earth of the arrester.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    waivable: EQUIPMENT,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, cable) = (run.resolved.run, run.resolved.cable);
    let screened = cable.has_screen();
    if spec.outdoor.value.0 <= 0.0 || !screened || spec.plugs == Plugs::Metal {
        return;
    }
    let message = format!("end {}: plastic plugs on the screened cable to port `{}`", sheet.name, spec.port);
    let finding = found.report(&RULE, at!(spec.plugs), message, "no way for the screen");
    finding.measured(spec.outdoor.value, Worse::Higher);
    finding.because(at!(cable.screening), "screened");
    finding.help("`plugs: metal`, crimped onto the screen at both ends");
}
