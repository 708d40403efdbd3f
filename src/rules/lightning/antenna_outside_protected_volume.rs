//! An antenna stands outside the volume that a lightning protection system protects, and is not bonded to the system.

use crate::rules::prelude::*;
use crate::spec::{MastBond, ProtectedVolume};

rule! {
    /// An antenna stands outside the volume that a lightning protection system protects, and its support is not bonded to it.
    ///
    /// It may be struck, and nothing but cables and the radio is there to carry the current. Either it stands in the protected
    /// volume, or its support is bonded to the system directly: which of them, the designer of the protection says. The program
    /// designs no lightning protection; it holds what is stated against each other.
    ///
    /// Source: IEC 62305-3 and IEC 62305-4, zones LPZ 0A and 0B (second-hand).
    severity: Warning,
    never_waived: SHOCKS,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let lightning = &sheet.lightning;
    let outside = lightning.has_system() && lightning.volume == Some(ProtectedVolume::Outside);
    let Some(bond) = lightning.bond.filter(|bond| outside && *bond != MastBond::Direct) else { return };
    let (end, support) = (sheet.resolved.end, sheet.resolved.support);
    let message = format!(
        "end {}: the antenna stands outside the volume that the lightning protection system protects, and `{}` is {}",
        sheet.name,
        support.id,
        bond.words()
    );
    let finding = found.report(&RULE, at!(end.lightning.protected_volume), message, "it may be struck here");
    finding.because(at!(support.mast_bond), bond.words());
    finding.because(lightning.system_at, "the system");
    finding.help(
        "ask the designer of the protection: lower the antenna into the volume, extend the volume, or bond the \
         support directly",
    );
}
