//! A copper cable joins two earth systems that are not bonded to each other.

use crate::rules::prelude::*;

rule! {
    /// A copper cable joins two earth systems that are not bonded to each other.
    ///
    /// Current flows in its screen all the time, and in a strike their difference stands across the port, which bears some
    /// 2 kV for an instant. Use fibre between separately earthed buildings, with power from the radio's own side. Points of
    /// one `system` are bonded to each other; a point that names none belongs to the site's own system.
    ///
    /// Source: Kirchhoff's laws; insulation of a port by IEEE 802.3-2022 (from memory, not seen).
    severity: Error,
    never_waived: PROTECTS_PEOPLE,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (Some(near), Some(far)) = (sheet.resolved.earth, run.resolved.entry_earth) else { return };
    if near.system == far.system {
        return;
    }
    let (spec, end) = (run.resolved.run, sheet.resolved.end);
    let message = format!(
        "end {}: the cable to port `{}` joins the earths of `{}` and `{}`, which are not bonded",
        sheet.name, spec.port, near.id, far.id
    );
    let finding = found.report(&RULE, at!(spec.entry_earth), message, "this earth at the entry");
    finding.because(at!(end.grounding.bonds_to), "that one at the radio");
    finding.because(at!(far.system), "its system");
    finding.because(at!(near.system), "the system of the other");
    finding.help("use fibre for the data and feed the radio from its own side, or have the two bonded and give them one `system`");
}
