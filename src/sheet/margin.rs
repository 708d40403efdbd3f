//! What is left between a computed value and the limit it must keep, for the page on which a hop is decided.

use super::budget::DirectionLines;
use super::crossed;
use super::line::lines;
use super::method::cited;
use super::missing::Missing;
use super::reason::Reason;
use super::shown::Rare;
use super::states::State;
use super::target::Target;
use super::traced::{AsTraced as _, Traced, all, read};
use crate::network::ResolvedEnd;
use crate::units::{Decibels, Percent};

lines! {
    /// What one direction has in hand.
    MarginLines {
        fade_margin: Decibels, "M", "fade margin at the capacity asked for",
            "margin of the most robust state that reaches the capacity";
        fade_in_hand: Decibels, "", "fade margin in hand", "fade margin less the one asked for";
        fog_margin: Decibels, "M_F", "fade margin in fog", "M − A_f, for information";
        multipath: Rare, "p_w", "multipath outage in the worst month",
            cited("ITU-R P.530-18 §2.3.2 at the fade margin, flat fading");
        errored: Rare, "", "severely errored time in the worst month",
            cited("multipath and crossing in clear air added, which mostly are severely errored time (ITU-R P.530-18, from memory)");
        errored_in_hand: Percent, "", "severely errored time in hand", "objective less that time";
        overload_in_hand: Decibels, "", "received level below overload", "overload of the receiver less P_r";
    }
}

/// What a direction has in hand.
pub(super) fn direction(
    receiver: &ResolvedEnd<'_>,
    lines: &DirectionLines,
    states: &[State],
    objective: &Traced<usize>,
    target: &Target,
) -> MarginLines {
    let radio = receiver.radio;
    let fade_margin = objective.and_then(|number| states[number].lines.margin.traced().clone());
    let fade_in_hand = match &target.fade_margin {
        Some(wanted) => all((&fade_margin, wanted)).map(|(margin, wanted)| margin - wanted),
        None => Traced::missing(Missing::judged(Reason::NoFadeMargin, target.capacity.place)),
    };
    let multipath = objective.and_then(|number| states[number].causes.multipath_worst_month.clone());
    let unasked = || Missing::judged(Reason::NoErrored, target.capacity.place);
    let errored = match &target.errored {
        Some(_) => objective.and_then(|number| {
            let causes = &states[number].causes;
            let crossing = causes.crossing.as_ref();
            crossed::with_clear_air(&causes.multipath_worst_month, crossing, |crossing| &crossing.clear_air_worst_month)
        }),
        None => Traced::missing(unasked()),
    };
    let errored_in_hand = match &target.errored {
        Some(most) => all((most, &errored)).map(|(most, errored)| most - errored),
        None => Traced::missing(unasked()),
    };
    MarginLines {
        multipath: multipath.map(Rare).line(),
        errored: errored.map(Rare).line(),
        errored_in_hand: errored_in_hand.line(),
        fog_margin: all((&lines.fog_loss, &fade_margin)).map(|(loss, margin)| margin - loss).line(),
        fade_margin: fade_margin.line(),
        fade_in_hand: fade_in_hand.line(),
        overload_in_hand: all((&read!(radio.overload), &lines.level)).map(|(most, level)| most - level).line(),
    }
}
