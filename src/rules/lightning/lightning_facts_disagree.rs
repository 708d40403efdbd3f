//! What is said of lightning protection cannot all be true.

use crate::rules::prelude::*;
use crate::spec::ProtectionSystem;

rule! {
    /// What is said of lightning protection cannot all be true.
    ///
    /// A structure without a lightning protection system has no class, no protected volume, and nothing that a support could be
    /// bonded to or kept apart from. One of the two is old or of another structure: a support that stands on another one says so
    /// in a `lightning_protection` of its own.
    ///
    /// Source: the terms of IEC 62305-3.
    severity: Error,
    never_waived: NOT_JUDGED,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let lightning = &sheet.lightning;
    if lightning.system != Some(ProtectionSystem::Absent) {
        return;
    }
    let (end, support, site) = (sheet.resolved.end, sheet.resolved.support, sheet.resolved.site);
    let own = support.lightning_protection.system.is_some();
    let class = if own { support.lightning_protection.class } else { site.lightning_protection.class };
    let class_at = if own { at!(support.lightning_protection.class) } else { at!(site.lightning_protection.class) };
    let said = [
        (class.is_some(), class_at, "a class of it is stated"),
        (
            lightning.bond.is_some(),
            at!(support.mast_bond),
            "the support is said to be bonded to it or kept apart from it",
        ),
        (
            lightning.volume.is_some(),
            at!(end.lightning.protected_volume),
            "the antenna is said to stand inside or outside its protected volume",
        ),
        (
            end.lightning.separation.asked.is_some(),
            at!(end.lightning.separation.asked),
            "a separation distance to it is required",
        ),
    ];
    let mut said = said.into_iter().filter(|(said, ..)| *said);
    let Some((_, place, what)) = said.next() else { return };
    let message = format!(
        "end {}: `{}` stands on a structure without a lightning protection system, yet {what}",
        sheet.name, support.id
    );
    let finding = found.report(&RULE, place, message, "of which system?");
    finding.known_at(at!(end.lightning));
    for (_, place, _) in said {
        finding.because(place, "and this");
    }
    finding.because(lightning.system_at, "none, it says");
    finding.help("ask whoever stated it; `system: present` where there is one");
}
