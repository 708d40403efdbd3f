//! What is left between a computed value and the limit it must keep, for the page on which a hop is decided.

use super::budget::{DirectionLines, State};
use super::line::{Line, Missing, lines};
use super::mount::Reach;
use super::path::{PathLines, altitude};
use super::reason::Reason;
use super::target::Target;
use crate::at;
use crate::network::ResolvedEnd;
use crate::physics::multipath::{ClearAirPath, Multipath};
use crate::place::Place;
use crate::units::{Decibels, Degrees, Metres, Percent};

lines! {
    /// What one direction has in hand.
    MarginLines {
        fade_margin: Decibels, "M", "fade margin at the capacity asked for",
            "margin of the most robust state that reaches the capacity";
        fade_in_hand: Decibels, "", "fade margin in hand", "fade margin less the one asked for";
        fog_margin: Decibels, "M_F", "fade margin in fog", "M − A_f, for information";
        multipath: Percent, "p_w", "multipath outage in the worst month",
            "ITU-R P.530-18 §2.3.2 at the fade margin; terrain at the mean ground of the two sites";
        overload_in_hand: Decibels, "", "received level below overload", "overload of the receiver less P_r";
    }
}

/// What a direction has in hand.
pub(super) fn direction(
    lines: &DirectionLines,
    state: Option<&State>,
    sender: &ResolvedEnd<'_>,
    receiver: &ResolvedEnd<'_>,
    path: &PathLines,
    target: &Target,
) -> MarginLines {
    let (radio, level) = (receiver.radio, &lines.level);
    let none = Missing::judged(Reason::NoStateForCapacity, at!(radio.states));
    let fade_margin = state.map_or(Err(none), |state| state.lines.margin.need());
    let mut from = state.map(|state| state.lines.margin.from.clone()).unwrap_or_default();
    let margin_from = from.clone();
    let fade_in_hand = match &target.fade_margin {
        Some(wanted) => {
            from.push(wanted.place);
            fade_margin.clone().map(|margin| margin - wanted.value())
        }
        None => Err(Missing::judged(Reason::NoFadeMargin, target.capacity.place)),
    };
    let mut overload_from = vec![at!(radio.overload)];
    overload_from.extend(&level.from);
    let fog_margin = lines.fog_loss.need().and_then(|loss| Ok(fade_margin.clone()? - loss));
    let fog_from = [&margin_from[..], &lines.fog_loss.from].concat();
    MarginLines {
        multipath: multipath(lines, &fade_margin, &margin_from, path, target, [sender, receiver]),
        fog_margin: Line::new(fog_margin, &fog_from),
        fade_margin: Line::new(fade_margin, &margin_from),
        fade_in_hand: Line::new(fade_in_hand, &from),
        overload_in_hand: Line::new(level.need().map(|level| radio.overload.value - level), &overload_from),
    }
}

/// Multipath outage at a margin, where the method reaches.
fn multipath(
    lines: &DirectionLines,
    margin: &Result<Decibels, Missing>,
    margin_from: &[Place],
    path: &PathLines,
    target: &Target,
    ends: [&ResolvedEnd<'_>; 2],
) -> Line<Percent> {
    let Some(([log_k, dn_75], place)) = target.refractivity else {
        return Line::new(Err(Missing::judged(Reason::NoRefractivity, target.capacity.place)), &[]);
    };
    let [(antenna_a, from_a), (antenna_b, from_b)] = ends.map(altitude);
    let [ground_a, ground_b] = ends.map(|end| end.site.ground_height.value.0);
    let fading = || {
        let frequency = lines.frequency.value.as_ref().map_err(Clone::clone)?.value;
        let path = ClearAirPath {
            distance: path.distance.need()?,
            frequency,
            antennas: [antenna_a, antenna_b],
            terrain: Metres(f64::midpoint(ground_a, ground_b)),
            log_k,
            dn_75,
        };
        let fading = Multipath::new(&path).map_err(|error| Missing::judged(error, place))?;
        let margin = margin.clone()?;
        // Without a margin it is down anyway, and no fade is needed.
        Ok(fading.worst_month(margin).unwrap_or(Percent(100.0)))
    };
    let from = [&[place], margin_from, &lines.frequency.from, &path.distance.from, &from_a, &from_b].concat();
    Line::new(fading(), &from)
}

/// How far a tilt lies inside what a bracket gives; negative outside.
pub(super) fn tilt(tilt: &Line<Degrees>, reach: Reach) -> Result<Degrees, Missing> {
    tilt.need().map(|tilt| {
        let (below, above) = (tilt - reach.least, reach.most - tilt);
        if below < above { below } else { above }
    })
}
