//! Fading in clear air takes more of the worst month than the objective for errors allows.

use crate::rules::prelude::*;
use crate::sheet::Rare;
use crate::units::Percent;

rule! {
    /// Fading in clear air takes more of the worst month than the objective for errors allows.
    ///
    /// Deep fades of clear air are over in seconds: they make severely errored seconds rather than unavailable time. Held
    /// against `objectives.errored` is the share of the worst month in which multipath takes the margin of the most robust
    /// state that reaches the capacity, each direction by itself; where two carriers share the channel, the share in which
    /// one spoils the other is added. Distortion within the channel is not computed; it can add to that on wide channels and
    /// long hops. Without that objective the rule is silent.
    ///
    /// More margin, a shorter hop or more slope between its ends: each 10 dB more make such fades ten times rarer.
    ///
    /// Source: ITU-R P.530-18 §2.3.2 and §4.1; that these fades mostly are errored seconds is from memory. The objective is as
    /// given.
    severity: Error,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let (Some(most), Some(share)) = (&hop.target.errored, direction.margins.errored.get()) else { return };
    let share: Percent = share.0;
    if share <= most.value() {
        return;
    }
    let (way, given) = (direction.way, &most.given);
    let message = format!("{way}: fades in clear air take {} of the worst month, more than {given}", Rare(share));
    let end = direction.receiver.end;
    let label = format!("margin {} here", line(&direction.margins.fade_margin));
    let finding = found.report(&RULE, at!(end.antenna), message, label);
    finding.measured(share, Worse::Higher);
    finding.because(most.place, format!("{} required here", most.given));
    finding
        .help("more margin, a shorter hop, or more slope between the ends: each 10 dB more make them ten times rarer");
}
