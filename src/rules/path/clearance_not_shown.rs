//! Nothing shows that the ends see each other.

use crate::rules::prelude::*;
use crate::sheet::{NoProfile, slips};

rule! {
    /// Nothing shows that the ends see each other.
    ///
    /// Without a profile of the path its clearance cannot be computed, and the level is that of a free path; where a profile
    /// covers only a part, nothing is known of the rest. Give
    /// `path.profile` or `path.csv` in the hop, or `terrain` in the network with `path.obstacles` in the hop.
    ///
    /// Source: ITU-R P.530-18 §2.2.2 plans every hop by its profile; that a hop without one is a finding is common practice.
    severity: Warning,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let spec = hop.resolved.hop;
    let (message, unseen) = match (&hop.profile.ground, hop.path.distance.get()) {
        (Err(NoProfile::None), _) => {
            ("there is no profile of the path, so its clearance is not shown".to_owned(), None)
        }
        (Ok(ground), Some(distance)) => {
            let (first, most) =
                (ground.points.first().map_or(distance, |point| point.distance), slips::may_differ(distance));
            if first <= most && distance - ground.last <= most {
                return;
            }
            let message = format!(
                "the profile reaches from {first} to {} of {distance}, so the rest is not shown to be clear",
                ground.last
            );
            (message, Some(first + (distance - ground.last)))
        }
        _ => return,
    };
    let finding = found.report(&RULE, at!(spec.id), message, "do its ends see each other?");
    if let Some(unseen) = unseen {
        finding.measured(unseen, Worse::Higher);
    }
    finding.decided_by(at!(spec.path.profile));
    finding.help("give the ground and what stands on it under `path`: `profile`, `csv`, or `terrain` in the network");
}
