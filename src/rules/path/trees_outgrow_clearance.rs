//! Trees outgrow the clearance.

use super::whole;
use crate::rules::prelude::*;
use crate::sheet::Radii;
use crate::units::FresnelRadii;

rule! {
    /// Trees outgrow the clearance.
    ///
    /// Today the path is cleared as asked for, at the median k or at the low one, but what grows on it takes too much of that before the last day its growth is
    /// counted to (`growth` and `until` of an obstacle, from the day of the heights).
    ///
    /// Raise the antennas now, or agree on felling and say until when.
    ///
    /// Source: ITU-R P.530-18 §2.2.2 asks that growth of vegetation be counted; the growth is the author's own.
    severity: Warning,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let profile = &hop.profile;
    let Some(outgrown) = profile.outgrown.as_ref().filter(|_| profile.lines.grown_in_hand.get().is_some()) else {
        return;
    };
    let message = format!(
        "{} at {} from a leave less than the required clearance from {} on",
        outgrown.what, outgrown.distance, outgrown.year
    );
    let short = Radii(-outgrown.left.0);
    let label = format!("{short} short of it on the last day of growth");
    let finding = found.report(&RULE, outgrown.spot.clone(), message, label);
    finding.measured(FresnelRadii(outgrown.left.0), Worse::Lower).of_whole_hop();
    let spec = hop.resolved.hop;
    finding.because(at!(spec.ends.a.height), "end a looks from here");
    finding.because(at!(spec.ends.b.height), "end b from here");
    if let Some((_, place)) = profile.asked() {
        finding.because(place, "the required clearance is set here");
    }
    finding.help(format!("both ends {} higher would stay clear of them; or have them cut back", whole(outgrown.raise)));
}
