//! A sender on the same channel and polarisation stands in the beam of a receiver.

use super::{cannot_work, is_twin, mends};
use crate::rules::prelude::*;

rule! {
    /// A sender on the same channel and polarisation stands in the beam of a receiver.
    ///
    /// Where the beam takes in another sender no antenna of that size can keep it out: two remote sites behind each other, or side by
    /// side nearer than a beamwidth. It is reported where the thresholds are raised by more than the network allows
    /// (`limits.threshold_degradation`, 1 dB where it says nothing).
    ///
    /// Source: half-power beam of the antenna as its sheet states it; powers of independent signals add. The limit is common
    /// practice, no source.
    severity: Warning,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let heard = &hop.heard[direction.way];
    let above = direction.heard.degradation_in_hand.get().is_some_and(|left| left.tidy().0 < 0.0);
    let Some(strongest) = heard.aggressors.first().filter(|_| above) else { return };
    if !strongest.in_beam || is_twin(strongest, hop, direction) || cannot_work(direction) {
        return;
    }
    let (end, receiver) = (direction.receiver.end, direction.receiver.name);
    let message = format!(
        "{} sends on this channel within the beam of end {receiver}, {} off its axis: {} over the noise, thresholds raised by {}",
        strongest.called,
        strongest.heard.coupling.off_receiver.tidy(),
        strongest.over_noise,
        direction.heard.degradation.get().unwrap_or_default(),
    );
    let finding = found.report(&RULE, at!(end.antenna), message, "the beam of this antenna");
    finding.measured(strongest.over_noise, Worse::Higher);
    finding.because(strongest.place, "this sender");
    finding.help(mends(hop, direction));
}
