//! The grounding conductor is long.

use crate::rules::prelude::*;

rule! {
    /// The grounding conductor is long.
    ///
    /// To a surge a wire is an inductance, about 1.5 µH for every metre whatever its thickness, and 10 kA/µs make 10 kV of
    /// every microhenry. Shortening helps where a thicker wire does not. The limit is `limits.ground_length` of the network,
    /// 6 m unless it says otherwise.
    ///
    /// Source: NEC 800.100(A)(4), 20 ft at dwellings, else an electrode of its own bonded to that of the building (from
    /// memory, not seen); elsewhere common practice.
    severity: Warning,
    never_waived: PROTECTS_PEOPLE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, limit) = (sheet.resolved.end, &sheet.practice.ground_length);
    let Some(length) = end.grounding.length.as_ref().filter(|length| length.value > limit.value()) else { return };
    let (has, most, over) = apart(length.value, limit.value());
    let inductance = line(&sheet.ground.inductance);
    let message = format!("end {}: a grounding conductor of {has}, {over} over {most}", sheet.name);
    let finding = found.report(&RULE, at!(end.grounding.length), message, format!("{inductance} to a surge"));
    finding.measured(length.value, Worse::Higher);
    threshold(finding, limit, format!("{most} at most"));
    finding
        .help(format!("{most} or less, or an earth point nearer to the radio that is bonded to that of the building"));
}
