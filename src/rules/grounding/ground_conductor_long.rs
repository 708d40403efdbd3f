//! The grounding conductor is long.

use crate::rules::prelude::*;

rule! {
    /// The grounding conductor is long.
    ///
    /// To a surge a wire is an inductance, about 1.5 µH for every metre whatever its thickness, and 10 kA/µs make 10 kV of
    /// every microhenry. Shortening helps where a thicker wire does not. The limit is `limits.ground_length` of the network;
    /// without it 6 m, or the height of the antenna where that is more, for a conductor down a tall building cannot be
    /// shorter.
    ///
    /// Source: common practice, no source: as short as practicable. The 20 ft of NEC 800.100(A)(4) bind the conductor of a
    /// protector in dwellings of one or two families (second-hand).
    severity: Warning,
    never_waived: PROTECTS_PEOPLE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, limit) = (sheet.resolved.end, &sheet.practice.ground_length);
    let down = end.height.value;
    let most = if limit.assumed && down > limit.value() { down } else { limit.value() };
    let Some(length) = end.grounding.length.as_ref().filter(|length| length.value > most) else { return };
    let (has, most, over) = apart(length.value, most);
    let inductance = line(&sheet.ground.inductance);
    let message = format!("end {}: a grounding conductor of {has}, {over} over {most}", sheet.name);
    let finding = found.report(&RULE, at!(end.grounding.length), message, format!("{inductance} to a surge"));
    finding.measured(length.value, Worse::Higher);
    threshold(finding, limit, format!("{most} at most"));
    finding
        .help(format!("{most} or less, or an earth point nearer to the radio that is bonded to that of the building"));
}
