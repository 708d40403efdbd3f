//! The profile has other ground heights at the ends than the sites.

use crate::rules::prelude::*;
use crate::sheet::Fine;
use crate::sheet::slips;
use crate::units::Metres;

rule! {
    /// The profile has other ground heights at the ends than the sites.
    ///
    /// The antennas stand on the ground of the sites, the obstacles on that of the profile. If the two do not agree within two
    /// metres and the stated uncertainty, every clearance is wrong by as much: two height systems, another place, a slip. From
    /// twenty metres on it is another path, and nothing can be said of this one: an error. Where the profile turned round agrees
    /// with both sites, it says so.
    ///
    /// Source: common practice, no source.
    severity: Error,
    waivable: DATA,
    check: Hop(check),
}

/// How far the two may differ: a site is no point. Common practice, no source.
const APART: Metres = Metres(2.0);

/// From here on it is the ground of another place. Common practice, no source.
const ELSEWHERE: Metres = Metres(20.0);

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let (Some(ground), Some(uncertainty)) = (hop.profile.profile(), hop.profile.lines.uncertainty.get()) else {
        return;
    };
    let Some(length) = hop.path.distance.get() else { return };
    let most = APART + uncertainty.0;
    let turned = slips::profile_runs_from_b(hop, most);
    let points = Both { a: (Metres(0.0), ground.points.first()), b: (length, ground.points.last()) };
    for (end, (at, point)) in hop.resolved.ends.each_ref().zip(points) {
        let (name, site) = (end.name, end.site);
        let here = ground.ground_at(at);
        let apart = Metres((here - site.ground_height.value).0.abs());
        if apart <= most || (turned && name == EndName::B) {
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
        if apart < ELSEWHERE {
            finding.at_most(Severity::Warning);
        }
        let in_feet = (site.ground_height.value.0 * 0.3048 - here.0).abs() <= most.0;
        finding.help(if turned {
            "the profile runs from b to a: turned round, it agrees with both sites; count distances from end a"
        } else if in_feet {
            "is the height of the site in feet? As feet it agrees with the profile: write the unit `ft`"
        } else {
            "use one height system for both, and check the position; the antenna stands on the site's ground"
        });
    }
}
