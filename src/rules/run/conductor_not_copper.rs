//! A cable has copper-clad aluminium conductors.

use crate::rules::prelude::*;
use crate::spec::Conductor;

rule! {
    /// A cable has copper-clad aluminium conductors.
    ///
    /// They have about half again the resistance of copper, break at the plug, and no category allows them.
    ///
    /// Source: ISO/IEC 11801-1 and ANSI/TIA-568 ask for solid copper (from memory, not seen).
    severity: Warning,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, cable) = (run.resolved.run, run.resolved.cable);
    if cable.material == Conductor::Copper {
        return;
    }
    let message = format!("end {}: cable `{}` is of {}", sheet.name, cable.id, cable.material.word());
    let finding = found.report(&RULE, at!(spec.cable), message, "not copper");
    finding.because(at!(cable.material), "its conductors");
    finding.help("take a cable with solid copper conductors");
}
