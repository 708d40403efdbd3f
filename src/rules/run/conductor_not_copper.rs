//! A cable has copper-clad aluminium conductors.

use crate::rules::prelude::*;
use crate::spec::Conductor;

rule! {
    /// A cable has copper-clad aluminium conductors.
    ///
    /// They have about half again the resistance of copper and break at the plug. At the sizes of network cable, 24 and 23
    /// AWG, they exceed the 9.38 Ω in 100 m that every category allows.
    ///
    /// Source: ANSI/TIA-568 for the limit (second-hand); it and ISO/IEC 11801-1 ask for solid copper (from memory, not
    /// seen). Resistance by the rule of mixtures with aluminium of IEC 60889.
    severity: Error,
    waivable: EQUIPMENT,
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
