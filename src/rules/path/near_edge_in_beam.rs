//! Something close to the antenna reaches into its beam.

use crate::rules::prelude::*;
use crate::sheet::Fine;
use crate::units::Metres;

rule! {
    /// Something close to the antenna reaches into its beam.
    ///
    /// Close to a dish the power travels in a tube as wide as the aperture, and the Fresnel zone alone would ask for next to
    /// nothing. Every `near_edges` of the support must stay below the axis of the beam by half the aperture and the share of
    /// the Fresnel radius asked for of the path; one with a bearing only counts where the beam passes over it. An edge that
    /// reaches in takes gain and adds side lobes.
    ///
    /// Source: geometry of the aperture; half of it added to the share of the Fresnel radius is common practice.
    severity: Warning,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    for (near, end) in hop.near.iter().zip(hop.ends.iter()) {
        let (Some(left), Some(clearance), Some(number)) =
            (near.lines.edge_in_hand.get(), near.lines.edge_clearance.get(), near.edge)
        else {
            continue;
        };
        if left.0.0 >= 0.0 {
            continue;
        }
        let (i, support, own, antenna) = (number, end.resolved.support, end.resolved.end, end.resolved.antenna);
        let edge = &support.near_edges[i];
        let by = Metres(-left.0.0).rounded_up();
        let (needed, place) = (near.lines.edge_needed.get().unwrap_or(left), at!(antenna.title));
        let message = format!(
            "end {}: the axis of the beam passes {clearance} over `{}`, {} short of the {needed} it needs",
            near.name,
            edge.title,
            Fine(Metres(-left.0.0))
        );
        let finding = found.report(&RULE, at!(support.near_edges[i].height), message, format!("at {}", edge.distance));
        finding.measured(left.0, Worse::Lower).known_at(at!(own.height));
        finding.because(at!(own.height), "the antenna looks out from here");
        finding.because(place, "half of its aperture must pass as well");
        finding.help(format!("raise the antenna by {by}, or mount it nearer to the edge or aside of it"));
    }
}
