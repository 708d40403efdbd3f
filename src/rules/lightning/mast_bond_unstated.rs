//! Nobody says how a support is joined to a lightning protection system.

use crate::rules::prelude::*;

rule! {
    /// Nobody says how a support is joined to the lightning protection system of its structure.
    ///
    /// A support is bonded to the system, or kept apart from it by the separation distance: the two are built differently, and
    /// ask for different surge arresters. Which of them it is, the designer of the protection says.
    ///
    /// Source: IEC 62305-3 (from memory, not seen).
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (lightning, support, site) = (&sheet.lightning, sheet.resolved.support, sheet.resolved.site);
    if !lightning.has_system() || lightning.bond.is_some() {
        return;
    }
    // Said of the support: however many hops stand there, somebody has to ask once.
    let message =
        format!("site `{}`: how `{}` is joined to the lightning protection system is not said", site.id, support.id);
    let finding = found.report(&RULE, at!(support.mast_bond), message, "no `mast_bond` here");
    finding.because(lightning.system_at, "the system");
    finding.help("ask its designer, and say `mast_bond: direct`, `spark-gap` or `apart`");
}
