//! The ground tiles of the network do not cover the path.

use crate::rules::prelude::*;
use crate::sheet::NoProfile;

rule! {
    /// The ground tiles of the network do not cover the path.
    ///
    /// A tile is missing, or one has a void where the path crosses it. Missing ground is never taken for sea level: without all of
    /// it there is no profile, and the clearance is not shown.
    ///
    /// Source: common practice; voids of SRTM layout are -32768.
    severity: Warning,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let (spec, network) = (hop.resolved.hop, hop.resolved.network);
    let Err(NoProfile::Tiles(why)) = &hop.profile.ground else { return };
    let message = format!("{why}, so the clearance is not shown");
    let finding = found.report(&RULE, at!(network.terrain), message, "not all of the path is in here");
    finding.because(at!(spec.id), "for this hop");
    finding.help("put the tile into the folder, or give the hop a profile of its own under `path`");
}
