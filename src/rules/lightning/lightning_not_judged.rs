//! Nobody knows whether a structure has a lightning protection system.

use crate::rules::prelude::*;
use crate::spec::ProtectionSystem;

rule! {
    /// Nobody knows whether a structure has a lightning protection system.
    ///
    /// It says `system: unknown`: neither where the antenna stands nor which impulse test its arresters need is judged. Where
    /// nothing at all is written of lightning protection there is no such finding; the packs then say that it is not stated.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let lightning = &sheet.lightning;
    if lightning.system != Some(ProtectionSystem::Unknown) {
        return;
    }
    // Said of the site or the support: somebody has to look once.
    let (site, support) = (sheet.resolved.site, sheet.resolved.support);
    let what =
        if support.lightning_protection.system.is_some() { format!(", `{}`", support.id) } else { String::new() };
    let message = format!("site `{}`{what}: whether there is a lightning protection system is not known", site.id);
    let finding = found.report(&RULE, lightning.system_at, message, "not known");
    finding
        .help("ask the owner of the structure or whoever inspects it, and say `system: present` or `system: absent`");
}
