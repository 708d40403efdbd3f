//! What is left between a computed value and the limit it must keep, for the page on which a hop is decided.

use super::budget::DirectionLines;
use super::geometry::altitude;
use super::line::lines;
use super::method::cited;
use super::missing::Missing;
use super::path::PathLines;
use super::reason::Reason;
use super::states::State;
use super::target::Target;
use super::traced::{AsTraced as _, Traced, all, read};
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::multipath::{ClearAirPath, Multipath};
use crate::units::{Decibels, Metres, Percent};

lines! {
    /// What one direction has in hand.
    MarginLines {
        fade_margin: Decibels, "M", "fade margin at the capacity asked for",
            "margin of the most robust state that reaches the capacity";
        fade_in_hand: Decibels, "", "fade margin in hand", "fade margin less the one asked for";
        fog_margin: Decibels, "M_F", "fade margin in fog", "M − A_f, for information";
        multipath: Percent, "p_w", "multipath outage in the worst month",
            cited("ITU-R P.530-18 §2.3.2 at the fade margin; terrain at the mean ground of the two sites");
        overload_in_hand: Decibels, "", "received level below overload", "overload of the receiver less P_r";
    }
}

/// What a direction has in hand.
pub(super) fn direction(
    resolved: &ResolvedHop<'_>,
    receiver: &ResolvedEnd<'_>,
    lines: &DirectionLines,
    states: &[State],
    objective: &Traced<usize>,
    path: &PathLines,
    target: &Target,
) -> MarginLines {
    let radio = receiver.radio;
    let fade_margin = objective.and_then(|number| states[number].lines.margin.traced().clone());
    let fade_in_hand = match &target.fade_margin {
        Some(wanted) => all((&fade_margin, wanted)).map(|(margin, wanted)| margin - wanted),
        None => Traced::missing(Missing::judged(Reason::NoFadeMargin, target.capacity.place)),
    };
    MarginLines {
        multipath: multipath(resolved, lines, &fade_margin, path, target).line(),
        fog_margin: all((&lines.fog_loss, &fade_margin)).map(|(loss, margin)| margin - loss).line(),
        fade_margin: fade_margin.line(),
        fade_in_hand: fade_in_hand.line(),
        overload_in_hand: all((&read!(radio.overload), &lines.level)).map(|(most, level)| most - level).line(),
    }
}

/// Multipath outage at a margin, where the method reaches.
fn multipath(
    resolved: &ResolvedHop<'_>,
    lines: &DirectionLines,
    margin: &Traced<Decibels>,
    path: &PathLines,
    target: &Target,
) -> Traced<Percent> {
    let Some(refractivity) = &target.refractivity else {
        return Traced::missing(Missing::judged(Reason::NoRefractivity, target.capacity.place));
    };
    let antennas = resolved.ends.each_ref().map(altitude);
    let grounds = resolved.ends.each_ref().map(|end| {
        let site = end.site;
        read!(site.ground_height)
    });
    let terrain = all((&grounds.a, &grounds.b)).map(|(a, b)| Metres(f64::midpoint(a.0, b.0)));
    let fading = all((refractivity, &lines.frequency, &path.distance, &antennas.a, &antennas.b, &terrain));
    let fading = fading.judge(|([log_k, dn_75], frequency, distance, a, b, terrain)| {
        Multipath::new(&ClearAirPath { distance, frequency: frequency.value, antennas: [a, b], terrain, log_k, dn_75 })
    });
    // Without a margin it is down anyway, and no fade is needed.
    all((&fading, margin)).map(|(fading, margin)| fading.worst_month(margin).unwrap_or(Percent(100.0)))
}
