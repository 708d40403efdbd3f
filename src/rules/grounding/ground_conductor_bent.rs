//! The grounding conductor has a tight bend.

use crate::rules::prelude::*;

rule! {
    /// The grounding conductor has a tight bend.
    ///
    /// A surge does not follow a sharp bend: it jumps. Lead the conductor short, straight and downward, without coils. The
    /// least radius is `limits.ground_bend` of the network, 200 mm unless it says otherwise.
    ///
    /// Source: common practice; NFPA 780 has 203 mm (8 in; from memory, not seen).
    severity: Warning,
    never_waived: PROTECTS_PEOPLE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, limit) = (sheet.resolved.end, &sheet.practice.ground_bend);
    let Some(bend) = end.grounding.tightest_bend.as_ref().filter(|bend| bend.value < limit.value()) else { return };
    let (has, least, under) = apart(bend.value, limit.value());
    let message = format!("end {}: the grounding conductor bends at {has}, {under} tighter than {least}", sheet.name);
    let finding = found.report(&RULE, at!(end.grounding.tightest_bend), message, "a surge may jump here");
    finding.measured(bend.value, Worse::Lower);
    threshold(finding, limit, format!("{least} at least"));
    finding.help(format!("a radius of {least} or more, or a straighter route"));
}
