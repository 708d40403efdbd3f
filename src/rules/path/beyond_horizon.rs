//! The far end lies below the horizon of a smooth Earth at sea level.

use crate::rules::prelude::*;
use crate::sheet::slips;
use crate::units::Metres;

rule! {
    /// The far end lies below the radio horizon, whatever the ground between is.
    ///
    /// Over a smooth Earth at sea level, with 4/3 of its radius, an antenna at height h sees √(2·k·R·h) far. Two ends farther apart
    /// than both of them see together have no line of sight, wherever they stand. So a position or a height is wrong: most often
    /// latitude and longitude are swapped, or a sign or a letter of the compass is. Where one such correction puts the ends as far
    /// apart as the profile is long, or as a hop may be, the help names it.
    ///
    /// Source: geometry of the smooth Earth with the median effective radius of ITU-R P.530.
    severity: Error,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let Some((distance, most)) = slips::beyond_horizon(hop) else { return };
    let message = format!(
        "the ends are {} apart, and cannot see each other beyond {}",
        in_kilometres(distance),
        in_kilometres(most)
    );
    let slip = slips::of_position(hop);
    // Both positions are named: a site with a slip is wrong for every hop that ends there.
    let first = slip.as_ref().map_or(EndName::A, |slip| slip.end);
    let site = hop.resolved.ends[first].site;
    let finding = found.report(&RULE, at!(site.position), message, format!("position of end {first}"));
    let site = hop.resolved.ends[first.far()].site;
    finding.because(at!(site.position), format!("position of end {}", first.far()));
    finding.of_whole_hop();
    let Some(slip) = slip else {
        finding.help("check both positions: latitude first, north and east positive");
        return;
    };
    finding.help(slip.said());
    if !slip.either {
        let site = hop.resolved.ends[first].site;
        let edits = vec![
            (at!(site.position.latitude).into(), format!("{} deg", slip.latitude)),
            (at!(site.position.longitude).into(), format!("{} deg", slip.longitude)),
        ];
        finding.fix_unsafely(edits, "it moves a site");
    }
}

fn in_kilometres(distance: Metres) -> String {
    format!("{:.1} km", distance.0 / 1000.0)
}
