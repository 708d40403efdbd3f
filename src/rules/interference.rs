//! Rules on what hops of a network, and of others, do to each other.

pub mod channel_used_in_beam;
pub mod channel_used_twice;
pub mod halves_mixed;
pub mod interference_too_strong;
pub mod neighbour_disturbed;
pub mod threshold_degraded;

use super::prelude::*;
use crate::sheet::Aggressor;

/// Whether a sender is the other one of two hops between the same supports, in one polarisation.
fn is_twin(other: &Aggressor, hop: &HopSheet<'_>, direction: &Direction<'_>) -> bool {
    let too_much = other.degradation > hop.heard[direction.way].limit.value();
    other.between_same_supports && other.heard.polarisation.0 <= 0.0 && too_much
}

/// Whether a rule on the channel says already why too much is heard.
fn told_by_channel(hop: &HopSheet<'_>, direction: &Direction<'_>) -> bool {
    let strongest = hop.heard[direction.way].aggressors.first();
    strongest.is_some_and(|strongest| strongest.in_beam || is_twin(strongest, hop, direction))
}

/// Whether the capacity asked for does not get through for interference.
fn cannot_work(direction: &Direction<'_>) -> bool {
    direction.heard.carrier_in_hand.get().is_some_and(|left| left.tidy().0 < 0.0)
}

/// Points at the senders that are heard most.
fn name_aggressors(finding: &mut Finding, hop: &HopSheet<'_>, direction: &Direction<'_>) {
    for (number, other) in hop.heard[direction.way].aggressors.iter().enumerate() {
        let fades = if other.heard.same_path { ", fades with the carrier" } else { "" };
        let words = format!(
            "{}{} over the noise, {} away, {} off the axis here and {} there{fades}",
            if number == 0 { "" } else { "then " },
            other.over_noise,
            other.heard.coupling.distance.tidy(),
            other.heard.coupling.off_receiver.tidy(),
            other.heard.coupling.off_sender.tidy(),
        );
        finding.because(other.place, words);
    }
}

/// What would do, each tried.
fn mends(hop: &HopSheet<'_>, direction: &Direction<'_>) -> String {
    let mend = &hop.heard[direction.way].mend;
    if !mend.tried {
        return "changes are tried for the receivers that hear most; `plan --assign` looks for a frequency plan"
            .to_owned();
    }
    let mut list = mend.words.clone();
    if let (Some(weaker), Some(angle)) = (mend.weaker, mend.off_axis) {
        list.push(format!(
            "the strongest {weaker} weaker, for example by an antenna with that much less gain {} off its axis",
            angle.tidy()
        ));
    }
    let mut help = match list.as_slice() {
        [] => "no single change that was tried does: `plan --assign` looks for a frequency plan".to_owned(),
        [only] => format!("{only} fixes it"),
        many => format!("any one of these fixes it: {}", many.join("; ")),
    };
    if mend.lacks_cross_polar {
        help.push_str(". Crossed polarisations count only where both antennas state `cross_polar`");
    }
    help
}
