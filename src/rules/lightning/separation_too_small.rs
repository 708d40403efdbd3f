//! Less than the separation distance is kept to a lightning protection system.

use crate::rules::prelude::*;

rule! {
    /// Less than the separation distance is kept to a lightning protection system, and nothing is bonded to it.
    ///
    /// In a strike the current flashes over from a conductor of the system to antenna, bracket or cable, and enters the building
    /// with it. The distance asked for is that of the designer (IEC 62305-3: s = ki kc l / km); the program does not compute it,
    /// and only compares what is kept with it. It is not asked where the support is bonded to the system.
    ///
    /// Source: IEC 62305-3, 6.3 (from memory, not seen).
    severity: Error,
    never_waived: SHOCKS,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let lightning = &sheet.lightning;
    let (asked, kept) = (&lightning.lines.separation_asked, &lightning.lines.separation_kept);
    let (Ok(asked), Ok(kept)) = (asked.value(), kept.value()) else { return };
    if !lightning.has_system() || !lightning.is_apart() || kept.value >= asked.value {
        return;
    }
    let end = sheet.resolved.end;
    let (has, wants, short) = apart(kept.value, asked.value);
    let message = format!(
        "end {}: {has} are kept to the lightning protection system, {short} less than the {wants} its designer \
         asks for",
        sheet.name
    );
    let finding = found.report(&RULE, at!(end.lightning.separation.kept), message, "kept");
    finding.measured(kept.value, Worse::Lower);
    finding.because(at!(end.lightning.separation.asked), "required");
    finding.help(
        "move antenna or cables away from its conductors, or have its designer agree to a bond and say so in \
         `mast_bond`",
    );
}
