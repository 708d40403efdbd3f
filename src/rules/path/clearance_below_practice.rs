//! The path is cleared by less than practice asks for.

use super::raises;
use crate::rules::prelude::*;
use crate::sheet::Radii;
use crate::units::FresnelRadii;

rule! {
    /// The path is cleared by less than practice asks for.
    ///
    /// Counted is what the line keeps from the worst point, less the uncertainty of the heights, in radii of the first Fresnel
    /// zone at the lower of the two frequencies. It is compared with `limits.clearance` at k = 4/3, and with
    /// `limits.low_k_clearance` at `climate.low_k` where that is given. Below 0.6 an obstacle begins to cost level.
    ///
    /// Source: ITU-R P.526-15 §2 for 0.6; ITU-R P.530-18 §2.2.2 plans with 1.0 at the median k and 0 to 0.3 at the k
    /// exceeded 99.9 % of the worst month in a temperate climate, and adds the uncertainty of the heights above 13 GHz
    /// (steps from memory). The threshold is the network's own.
    severity: Warning,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let (profile, lines) = (&hop.profile, &hop.profile.lines);
    // A blocked path is said to be blocked.
    if profile.obstruction.is_some() {
        return;
    }
    let (Some(left), Some(has)) = (lines.in_hand.get(), lines.fraction.get()) else { return };
    let (Some(asked), low_at) = (profile.asked(), profile.low_at()) else { return };
    let (worst, has, wants, short, k, place) = match (left, lines.low_in_hand.get(), profile.low().zip(low_at)) {
        (left, low, _) if left.0 < 0.0 && low.is_none_or(|low| left <= low) => {
            (&profile.worst, has, asked, left, "4/3".to_owned(), profile.asked_at)
        }
        (_, Some(low), Some(((k, fraction), place))) if low.0 < 0.0 => {
            (&profile.low_worst, lines.low_fraction.get().unwrap_or(has), fraction, low, k.to_string(), place)
        }
        _ => return,
    };
    let Some(worst) = worst else { return };
    let (left, short) = (short, Radii(-short.0));
    let message = format!(
        "clearance over {} at {} from a is {has} at k = {k}, {short} short of the {wants} asked for",
        worst.what, worst.distance
    );
    let label = format!("its top is at {} above the sea", worst.top);
    let finding = found.report(&RULE, worst.spot.clone(), message, label);
    finding.measured(FresnelRadii(left.0), Worse::Lower).of_whole_hop();
    let spec = hop.resolved.hop;
    finding.because(at!(spec.ends.a.height), "end a looks from here");
    finding.because(at!(spec.ends.b.height), "end b from here");
    finding.because(place, format!("{wants} asked for here"));
    if let Some(ground) = profile.profile()
        && let Some(uncertainty) = &ground.uncertainty
    {
        finding.because(ground.uncertainty_place, format!("{uncertainty} of it counted for the heights"));
    }
    if let Some(help) = raises(hop) {
        finding.help(help);
    }
}
