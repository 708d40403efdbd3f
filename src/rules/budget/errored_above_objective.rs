//! Multipath fading errs more of the worst month than the objective allows.

use crate::rules::prelude::*;

rule! {
    /// Multipath fading errs more of the worst month than the objective allows.
    ///
    /// Deep fades of clear air are over in seconds: they make severely errored seconds rather than unavailable time. Held
    /// against `objectives.errored` is the share of the worst month in which multipath takes the margin of the most robust
    /// state that reaches the capacity, each direction by itself. Distortion within the channel is not computed; it can add to
    /// that on wide channels and long hops. Without that objective the rule is silent.
    ///
    /// More margin, a shorter hop or more slope between its ends: ten decibels are ten times less.
    ///
    /// Source: ITU-R P.530-18 §2.3.2; that these fades mostly are errored seconds is from memory. The objective is as given.
    severity: Error,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let Some(most) = &hop.target.errored else { return };
    let Some(share) = direction.margins.multipath.get().filter(|share| *share > most.value()) else { return };
    let (has, allowed, _) = apart(share, most.value());
    let message = format!("{}: multipath fading errs {has} of the worst month, more than {allowed}", direction.way);
    let end = direction.receiver.end;
    let label = format!("margin {} here", line(&direction.margins.fade_margin));
    let finding = found.report(&RULE, at!(end.antenna), message, label);
    finding.measured(share, Worse::Higher);
    finding.because(most.place, format!("{} asked for here", most.given));
    finding.help("more margin, a shorter hop, or more slope between the ends: ten decibels are ten times less");
}
