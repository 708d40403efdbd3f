//! The screen of an outdoor cable is not bonded at both ends.

use crate::rules::prelude::*;
use crate::spec::ScreenBond;

rule! {
    /// The screen of an outdoor cable is not bonded at both ends.
    ///
    /// Against surges a screen works only when the case of the radio and the bar at the entry both hold it. Where the two
    /// ends have different earths, use fibre instead of leaving one end open.
    ///
    /// Source: common practice; required where the screen enters a building by NEC 800.100 (from memory, not seen).
    severity: Warning,
    never_waived: SHOCKS,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, cable) = (run.resolved.run, run.resolved.cable);
    let screened = cable.has_screen();
    if spec.outdoor.value.0 <= 0.0 || !screened || spec.screen == ScreenBond::BothEnds {
        return;
    }
    let bonded = spec.screen.words();
    let message = format!("end {}: the screen of the cable to port `{}` is bonded {bonded}", sheet.name, spec.port);
    let finding = found.report(&RULE, at!(spec.screen), message, format!("bonded {bonded}"));
    finding.because(at!(cable.screening), "the screen");
    finding.help("`screen: both-ends`: at the case of the radio and at the earth of the entry");
}
