//! Nobody says whether an antenna stands in the volume that a lightning protection system protects.

use crate::rules::prelude::*;

rule! {
    /// Nobody says whether an antenna stands in the volume that the lightning protection system protects.
    ///
    /// Outside of it an antenna may be struck. The program does not work out the volume: whoever designed or inspected the system
    /// says what is in it (rolling sphere, protective angle or mesh of IEC 62305-3).
    ///
    /// Source: IEC 62305-3 (from memory, not seen).
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (lightning, end) = (&sheet.lightning, sheet.resolved.end);
    if !lightning.has_system() || lightning.volume.is_some() {
        return;
    }
    let message = format!("end {}: whether the antenna stands in the protected volume is not said", sheet.name);
    let finding = found.report(&RULE, at!(end.lightning.protected_volume), message, "inside or outside?");
    finding.because(lightning.system_at, "the system");
    finding.help("ask its designer, and say `protected_volume: inside` or `outside`");
}
