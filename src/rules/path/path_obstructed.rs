//! Something stands in the line of sight.

use super::raises;
use crate::rules::prelude::*;
use crate::sheet::Fine;

rule! {
    /// Something stands in the line of sight.
    ///
    /// The straight line between the antennas, over an Earth swollen by k = 4/3, passes below the top of the ground or of
    /// what stands on it. No uncertainty is counted here: by the heights as they are given the hop is blocked. The loss over
    /// the obstacle is in the level budget, and at millimetre waves it is never worth living with.
    ///
    /// Raise the antennas by what the help says, or find another place for an end.
    ///
    /// Source: geometry; k = 4/3 of 6371 km after ITU-R P.310-10; loss by ITU-R P.526-15 §4.1 and §4.5.1.
    severity: Error,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let (spec, profile) = (hop.resolved.hop, &hop.profile);
    let (Some(worst), Some(lowest)) = (&profile.obstruction, profile.lines.lowest.get()) else { return };
    let by = Fine(crate::units::Metres(-lowest.0.0));
    let message = format!(
        "{} at {} from a stand{} {by} into the line of sight",
        worst.what,
        worst.distance,
        if worst.what.is_many() { "" } else { "s" }
    );
    let finding =
        found.report(&RULE, worst.spot.clone(), message, format!("its top is at {} above the sea", worst.top));
    finding.measured(lowest.0, Worse::Lower).of_whole_hop();
    finding.because(at!(spec.ends.a.height), "end a looks from here");
    finding.because(at!(spec.ends.b.height), "end b from here");
    if let Some(help) = raises(hop) {
        finding.help(help);
    }
}
