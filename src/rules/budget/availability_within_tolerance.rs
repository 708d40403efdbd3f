//! The availability is reached only if nothing is off by what it may be off.

use crate::rules::prelude::*;

rule! {
    /// The availability is reached only if nothing is off by what it may be off.
    ///
    /// Power, gains, thresholds and the rain rate each have a tolerance where somebody states one (`transmit_tolerance`,
    /// `gain_tolerance`, `threshold_tolerance`, `climate.rain_rate_tolerance`). With all of them at their worst together the
    /// objective is missed. That is a bound and no forecast: how likely it is nobody can say from limits alone. Whoever signs
    /// for the objective should know.
    ///
    /// Source: arithmetic on the stated limits. That such a hop is called tight is common practice, no source.
    severity: Advice,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let (service, wanted) = (&hop.service, &hop.target.availability);
    let (Some(has), Some(least)) = (service.counted.get(), service.counted_least.get()) else { return };
    if has < wanted.value() || least >= wanted.value() {
        return;
    }
    let (lowest, wants, _) = apart(least, wanted.value());
    let (shown, ..) = apart(has, wanted.value());
    let message =
        format!("availability is {shown}, but may be {lowest}, below {wants}, by the tolerances that are stated");
    let spec = hop.resolved.hop;
    let finding = found.report(&RULE, at!(spec.id), message, format!("{} at best", line(&service.counted_most)));
    finding.measured(least, Worse::Lower).of_whole_hop();
    finding.because(wanted.place, format!("{} required here", wanted.given));
    if let Some(tolerance) = &hop.target.rain_rate_tolerance {
        finding.because(tolerance.place, format!("± {}: the rain rate", tolerance.given));
    }
    finding.help("keep more margin, or state closer tolerances; accept it by a waiver if the objective may be missed");
}
