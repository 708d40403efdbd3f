//! A support is kept apart from a lightning protection system, and nobody says by how much.

use crate::rules::prelude::*;
use crate::spec::MastBond;

rule! {
    /// A support is kept apart from a lightning protection system, and nobody says by how much.
    ///
    /// The designer of the protection states the separation distance; the crew has to know it, and the distance that is kept has
    /// to be held against it. Without either nothing is judged.
    ///
    /// Source: IEC 62305-3, 6.3 (from memory, not seen).
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (lightning, end, support) = (&sheet.lightning, sheet.resolved.end, sheet.resolved.support);
    let (asked, kept) = (end.lightning.separation.asked.is_some(), end.lightning.separation.kept.is_some());
    if !lightning.has_system() || lightning.bond != Some(MastBond::Apart) || (asked && kept) {
        return;
    }
    let lacks = match (asked, kept) {
        (true, _) => "what is kept of it",
        (_, true) => "what is required",
        _ => "what is required and what is kept",
    };
    let message = format!(
        "end {}: `{}` is kept apart from the lightning protection system, and {lacks} is not said",
        sheet.name, support.id
    );
    let place = if asked { at!(end.lightning.separation.kept) } else { at!(end.lightning.separation.asked) };
    let finding = found.report(&RULE, place, message, "how far?");
    finding.known_at(at!(end.lightning.separation));
    finding.because(at!(support.mast_bond), "kept apart");
    finding.help(
        "add `separation: { asked: …, kept: … }`: the distance its designer asks for, and the least that is kept",
    );
}
