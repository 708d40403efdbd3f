//! Other senders raise the thresholds of a receiver by more than the network allows.

use super::{cannot_work, mends, name_aggressors, told_by_channel};
use crate::rules::prelude::*;

rule! {
    /// Other senders raise the thresholds of a receiver by more than the network allows.
    ///
    /// What comes in from senders on the same spectrum adds to the noise, and every state then needs so much more level: that is lost
    /// from the fade margin. What comes from the site of the partner fades with the carrier and is lowered by its whole margin;
    /// all else is taken as unfaded. The air between is taken as clear up to the radio horizon: a hill or a house in the way
    /// makes it less, and a waiver may say so. The limit is `limits.threshold_degradation` of the network, 1 dB where it says
    /// nothing. A radio that states no `noise_figure` is taken to be as quiet as any is.
    ///
    /// Each change that the help offers was tried: with it no receiver that it touches is above the limit.
    ///
    /// Source: powers of independent signals add; patterns of ITU-R F.699-8 where none is measured. The limit is common practice,
    /// no source.
    severity: Warning,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let (end, heard) = (direction.receiver.end, &hop.heard[direction.way]);
    let lines = &direction.heard;
    let (Some(degradation), Some(left)) = (lines.degradation.get(), lines.degradation_in_hand.get()) else { return };
    if left.tidy().0 >= 0.0 || told_by_channel(hop, direction) || cannot_work(direction) {
        return;
    }
    let by = heard.aggressors.first().map_or_else(
        || "by senders unknown here".to_owned(),
        |strongest| format!("most by {}, {} over the noise", strongest.called, strongest.over_noise),
    );
    let message = format!(
        "interference raises the thresholds of end {} by {degradation}, more than {}: {by}",
        direction.receiver.name,
        heard.limit.value(),
    );
    let finding = found.report(&RULE, at!(end.radio), message, "this receiver");
    finding.measured(degradation, Worse::Higher);
    name_aggressors(finding, hop, direction);
    finding.help(mends(hop, direction));
}
