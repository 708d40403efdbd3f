//! How a cable is handled: the insert that seals it, its bends, its drip loop, how much of it to take.

use super::line::{AS_WRITTEN, Line, Missing, lines};
use super::reason::Reason;
use super::target::Target;
use crate::at;
use crate::network::ResolvedRun;
use crate::physics::{cable_handling, channel_length};
use crate::spec::{Gland, Screening};
use crate::units::{Celsius, Given, Metres, Millimetres, Quantity as _};

lines! {
    /// The handling of one cable run.
    HandlingLines {
        gland_room: Millimetres, "", "room of the cable within that insert", "the nearer edge";
        bend_radius: Millimetres, "", "least bend radius, fixed",
            "as the cable says, or 4 diameters (ANSI/TIA-568.0, from memory)";
        pulling_radius: Millimetres, "", "least bend radius, while pulling", "8 diameters (IEC 61156-5, from memory)";
        drip_loop: Given<Millimetres>, "", "depth of the drip loop below the port", AS_WRITTEN;
        hot_length: Metres, "L'", "length as Ethernet counts it, hot",
            "ANSI/TIA-568 lengths against temperature (from memory); indoors at 20 °C";
        hot_length_in_hand: Metres, "", "length left to the longest channel, hot", "longest channel less L'";
        longest_hot: Metres, "", "longest outdoor length for data, hot", "the same, solved for the length";
        to_take: Metres, "", "cable to take, spare included", "length and spare (common practice), to the next metre";
    }
}

/// The insert of a port that leaves the diameter the most room either way, and how much that is.
pub(super) fn best_gland(glands: &[Gland], diameter: Millimetres) -> Option<(&Gland, Millimetres)> {
    let room = |gland: &Gland| {
        let (below, above) = (diameter - gland.cable.min.value, gland.cable.max.value - diameter);
        if below < above { below.tidy() } else { above.tidy() }
    };
    let fits = glands.iter().filter(|gland| gland.cable.holds(diameter)).map(|gland| (gland, room(gland)));
    // The first of two that are alike.
    fits.reduce(|best, next| if next.1 > best.1 { next } else { best })
}

pub(super) fn compute(resolved: &ResolvedRun<'_>, target: &Target, hot: Celsius) -> HandlingLines {
    let (run, cable, port) = (resolved.run, resolved.cable, resolved.port);
    let practice = &target.practice;
    let diameter = cable.outside_diameter.value;
    let (outdoor, indoor) = (run.outdoor.value, run.indoor.as_ref().map_or(Metres(0.0), |given| given.value));
    let lengths = [at!(run.outdoor), at!(run.indoor)];
    let room = best_gland(&port.glands, diameter)
        .map(|(_, room)| room)
        .ok_or_else(|| Missing::judged(Reason::NothingSeals, at!(cable.outside_diameter)));
    let bend = cable
        .bend_radius
        .as_ref()
        .map_or_else(|| cable_handling::fixed_bend(diameter).rounded_up(), |given| given.value);
    let whole = (outdoor + indoor).tidy();
    let screened = cable.screening != Screening::UUtp;
    let counted = (channel_length::equivalent(outdoor, hot, screened) + indoor).tidy();
    // What one metre outdoors counts for.
    let metre = channel_length::equivalent(Metres(1.0), hot, screened);
    let longest = Metres(((practice.hot_length.value() - indoor).0 / metre.0).max(0.0));
    let spare = 1.0 + practice.spare.value().0 / 100.0;
    let mut hot_from = lengths.to_vec();
    hot_from.extend([at!(cable.screening), target.hottest_air.place, practice.sun_on_jacket.place]);
    let mut hand_from = hot_from.clone();
    hand_from.push(practice.hot_length.place);
    let mut take_from = lengths.to_vec();
    take_from.push(practice.spare.place);
    HandlingLines {
        gland_room: Line::new(room, &[at!(cable.outside_diameter), at!(port.glands)]),
        bend_radius: Line::known(bend, &[at!(cable.outside_diameter), at!(cable.bend_radius)]),
        pulling_radius: Line::known(
            cable_handling::pulling_bend(diameter).rounded_up(),
            &[at!(cable.outside_diameter)],
        ),
        drip_loop: Line::known(practice.drip_loop.given.clone(), &[practice.drip_loop.place]),
        hot_length: Line::known(counted, &hot_from),
        hot_length_in_hand: Line::known(practice.hot_length.value() - counted, &hand_from),
        longest_hot: Line::known(longest, &hand_from),
        to_take: Line::known(Metres((whole.0 * spare - 1e-9).ceil()), &take_from),
    }
}
