//! Line of sight: what stands in the way, and how well that is known.

pub mod beyond_horizon;
pub mod clearance_below_practice;
pub mod clearance_not_shown;
pub mod near_edge_in_beam;
pub mod path_obstructed;
pub mod position_imprecise;
pub mod profile_ends_disagree;
pub mod profile_length_disagrees;
pub mod profile_too_coarse;
pub mod terrain_tile_missing;
pub mod trees_outgrow_clearance;

use crate::sheet::{Fine, HopSheet};
use crate::units::Metres;

/// A raise rounded up to the centimetre, so that it is enough as printed.
fn whole(raise: Fine) -> Fine {
    Fine(Metres((raise.0.0 * 100.0 - 1e-6).ceil() / 100.0))
}

/// More than any antenna is raised by: beyond it the way out is another one. Common practice, no source.
const TALLEST: Metres = Metres(200.0);

/// What the antennas must go up by to have the clearance asked for, rounded up to the centimetre.
fn raises(hop: &HopSheet<'_>) -> Option<String> {
    let lines = &hop.profile.lines;
    let up = |line: &crate::sheet::Line<Fine>| line.get().map(whole).filter(|raise| raise.0 <= TALLEST);
    let ways = [
        up(&lines.raise_a).map(|raise| format!("end a by {raise}")),
        up(&lines.raise_b).map(|raise| format!("end b by {raise}")),
        up(&lines.raise_both).map(|raise| format!("both by {raise}")),
    ];
    let ways: Vec<String> = ways.into_iter().flatten().collect();
    (!ways.is_empty()).then(|| format!("for the required clearance, raise {}", ways.join(", or ")))
}
