//! A tree or a house could stand on the path unseen by its profile.

use crate::rules::prelude::*;

rule! {
    /// A tree or a house could stand on the path unseen by its profile.
    ///
    /// Two points lie further apart than the first Fresnel zone is wide, and the line passes so low there that something of
    /// `limits.unseen_height` (10 m unless set) would reach into it. The gaps next to the ends do not count: those one sees
    /// from the site.
    ///
    /// Look at the place shown, and give the points or the obstacles there.
    ///
    /// Source: ITU-R P.526-15 §2 for the width of the zone; the height is common practice, no source.
    severity: Advice,
    waivable: DATA,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let profile = &hop.profile;
    let Some(gap) = profile.gap.as_ref().filter(|_| profile.lines.in_hand.get().is_some()) else { return };
    let Some(spacing) = profile.lines.spacing.get() else { return };
    let [from, to] = gap.between;
    let message = format!(
        "between {from} and {to} from a only {} are in hand over the ground, and the profile has points up to {spacing} apart",
        gap.left
    );
    let label = format!("the Fresnel zone is {} wide", gap.zone);
    let finding = found.report(&RULE, gap.spot.clone(), message, label);
    finding.measured(gap.left.0, Worse::Lower).of_whole_hop();
    finding.help("find out what stands there, and give it under `path`; `limits.unseen_height` says how high counts");
}
