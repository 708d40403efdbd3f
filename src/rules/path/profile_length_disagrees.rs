//! The profile is not as long as the path.

use crate::rules::prelude::*;
use crate::sheet::slips;
use crate::units::Metres;

rule! {
    /// The profile is not as long as the path.
    ///
    /// Its last point lies more than a hundredth, and more than 5 m, away from the distance between the positions of the sites:
    /// it was taken between other places, or in another unit. From a tenth on it is another path, and nothing can be said of this
    /// one: an error. Where another unit would fit, it says so.
    ///
    /// Source: common practice, no source; the distance is the WGS 84 geodesic.
    severity: Error,
    waivable: DATA,
    check: Hop(check),
}

/// The part of the path from which on the profile is that of another one. Common practice, no source.
const ANOTHER: f64 = 0.1;

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let (Some(ground), Some(distance)) = (hop.profile.profile(), hop.path.distance.get()) else { return };
    if hop.profile.lines.spacing.get().is_none() {
        return;
    }
    let most = slips::may_differ(distance);
    if Metres((ground.last - distance).0.abs()) <= most {
        return;
    }
    let (last, wants, by) = apart(ground.last, distance);
    let message = format!("the profile ends at {last} and the sites are {wants} apart, a difference of {by}");
    let written =
        ground.points.iter().rev().find(|point| point.distance == ground.last).and_then(|point| point.spot.clone());
    let finding =
        found.report(&RULE, written.unwrap_or_else(|| ground.spot.clone()), message, "the last point of the profile");
    finding.measured(Metres((ground.last - distance).0.abs()), Worse::Higher).of_whole_hop();
    let (a, b) = (hop.resolved.ends.a.site, hop.resolved.ends.b.site);
    finding.because(at!(a.position), "position of end a");
    finding.because(at!(b.position), "position of end b");
    if (ground.last - distance).0.abs() < ANOTHER * distance.0 {
        finding.at_most(Severity::Warning);
    }
    finding.help(match slips::of_profile_unit(ground.last, distance) {
        Some(unit) => format!("were the distances meant in {unit}? Then the profile is as long as the path"),
        None => "take the profile between these positions, or correct the position that is wrong".into(),
    });
}
