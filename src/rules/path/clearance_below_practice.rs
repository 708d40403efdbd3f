//! The path is cleared by less than practice asks for.

use super::raises;
use crate::rules::prelude::*;
use crate::sheet::Radii;
use crate::units::FresnelRadii;

rule! {
    /// The path is cleared by less than practice asks for.
    ///
    /// Counted is what the line keeps from the worst point, less the uncertainty of the heights, in radii of the first Fresnel
    /// zone at the lower of the two frequencies. It is compared at k = 4/3, and again at the `k` exceeded 99.9 % of the worst
    /// month: `climate.low_k`, else that of the length of the path. How much is asked for at each says
    /// `limits.clearance_criteria`, else ITU-R P.530-18 for a temperate climate: 1.0 and 0.3; `limits.clearance` and
    /// `limits.low_k_clearance` stand above both. A path that passes at the median only is said to. Below 0.6 an obstacle begins
    /// to cost level.
    ///
    /// Source: ITU-R P.530-18 §2.2.2 plans with 1.0 at the median k and 0 to 0.3 at the k exceeded 99.9 % of the worst month
    /// in a temperate climate, up to 0.6 in the tropics, and adds the uncertainty of the heights above 13 GHz (shares, steps and
    /// the closed form of the low k from memory); ITU-R P.526-15 §2 for 0.6.
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
    let (Some(left), Some(low), Some(k)) = (lines.in_hand.get(), lines.low_in_hand.get(), lines.low_k.get()) else {
        return;
    };
    let at_low_k = !(left.0 < 0.0 && left <= low);
    let (worst, fraction, asked, left, k) = if !at_low_k {
        (&profile.worst, &lines.fraction, profile.asked(), left, "4/3".to_owned())
    } else if low.0 < 0.0 {
        (&profile.low_worst, &lines.low_fraction, profile.asked_low(), low, k.to_string())
    } else {
        return;
    };
    let (Some(has), Some((wants, place))) = (fraction.get(), asked) else { return };
    let Some(worst) = worst else { return };
    let short = Radii(-left.0);
    let only = if profile.passes_at_median_only() { "; at the median k of 4/3 there is enough" } else { "" };
    let message = format!(
        "clearance over {} at {} from a is {has} at k = {k}, {short} short of the {wants} required{only}",
        worst.what, worst.distance
    );
    let label = format!("its top is at {} above the sea", worst.top);
    let finding = found.report(&RULE, worst.spot.clone(), message, label);
    finding.measured(FresnelRadii(left.0), Worse::Lower).of_whole_hop();
    let spec = hop.resolved.hop;
    finding.because(at!(spec.ends.a.height), "end a looks from here");
    finding.because(at!(spec.ends.b.height), "end b from here");
    finding.because(place, format!("{wants} required here"));
    if let Some(place) = profile.low_k_at().filter(|_| at_low_k) {
        finding.because(place, "the low k");
    }
    if let Some(ground) = profile.profile()
        && let Some(uncertainty) = &ground.uncertainty
    {
        finding.because(ground.uncertainty_place, format!("{uncertainty} of it counted for the heights"));
    }
    if let Some(help) = raises(hop) {
        finding.help(help);
    }
}
