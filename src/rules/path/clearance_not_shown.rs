//! Nothing shows that the ends see each other.

use crate::rules::prelude::*;
use crate::sheet::NoProfile;

rule! {
    /// Nothing shows that the ends see each other.
    ///
    /// Without a profile of the path its clearance cannot be computed, and the level is that of a free path. Give
    /// `path.profile` or `path.csv` in the hop, or `terrain` in the network with `path.obstacles` in the hop.
    ///
    /// Source: ITU-R P.530-18 §2.2.2 plans every hop by its profile; that a hop without one is a finding is common practice.
    severity: Warning,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let spec = hop.resolved.hop;
    if !matches!(hop.profile.ground, Err(NoProfile::None)) {
        return;
    }
    let message = "there is no profile of the path, so its clearance is not shown";
    let finding = found.report(&RULE, at!(spec.id), message, "do its ends see each other?");
    finding.help("give the ground and what stands on it under `path`: `profile`, `csv`, or `terrain` in the network");
}
