//! The profile has other ground heights at the ends than the sites.

use crate::rules::prelude::*;
use crate::sheet::Fine;
use crate::units::Metres;

rule! {
    /// The profile has other ground heights at the ends than the sites.
    ///
    /// The antennas stand on the ground of the sites, the obstacles on that of the profile. If the two do not agree within two
    /// metres and the stated uncertainty, every clearance is wrong by as much: two height systems, another place, a slip.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    waivable: DATA,
    check: Hop(check),
}

/// How far the two may differ: a site is no point. Common practice, no source.
const APART: Metres = Metres(2.0);

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let (Some(ground), Some(uncertainty)) = (hop.profile.profile(), hop.profile.lines.uncertainty.get()) else {
        return;
    };
    let Some(length) = hop.path.distance.get() else { return };
    let most = APART + uncertainty.0;
    let points = Both { a: (Metres(0.0), ground.points.first()), b: (length, ground.points.last()) };
    for (end, (at, point)) in hop.resolved.ends.each_ref().zip(points) {
        let (name, site) = (end.name, end.site);
        let here = ground.ground_at(at);
        let apart = Metres((here - site.ground_height.value).0.abs());
        if apart <= most {
            continue;
        }
        let message = format!(
            "end {name}: the ground is at {} in the profile and at {} at the site, {} apart",
            Fine(here),
            site.ground_height,
            Fine(apart)
        );
        let spot = point.and_then(|point| point.spot.clone()).unwrap_or_else(|| ground.spot.clone());
        let finding = found.report(&RULE, spot, message, format!("{} here", Fine(here)));
        finding.measured(apart, Worse::Higher).of_whole_hop().about(name.letter());
        finding.because(at!(site.ground_height), "the ground of the site");
        finding.help("use one height system for both, and check the position; the antenna stands on the site's ground");
    }
}
