//! How a cable is handled: the insert that seals it, its bends, its drip loop, how much of it to take.

use super::line::{AS_WRITTEN, lines};
use super::method::cited;
use super::reason::Reason;
use super::target::Target;
use super::traced::{Traced, all, read, see};
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
            cited("as the cable says, or 4 diameters (ANSI/TIA-568.0, from memory)");
        pulling_radius: Millimetres, "", "least bend radius, while pulling", cited("8 diameters (IEC 61156-5, from memory)");
        drip_loop: Given<Millimetres>, "", "depth of the drip loop below the port", AS_WRITTEN;
        hot_length: Metres, "L'", "length as Ethernet counts it, hot",
            cited("ANSI/TIA-568 lengths against temperature (from memory); indoors at 20 °C");
        hot_length_in_hand: Metres, "", "length left to the longest channel, hot", "longest channel less L'";
        longest_hot: Metres, "", "longest outdoor length for data, hot", "the same, solved for the length";
        to_take: Metres, "", "cable to take, spare included", cited("length and spare (common practice), to the next metre");
    }
}

/// The insert of a port that leaves the diameter the most room either way, and how much that is.
///
/// Of a diameter that is known by a range, both ends have to have it.
fn best_gland(glands: &[Gland], least: Millimetres, most: Millimetres) -> Option<(&Gland, Millimetres)> {
    let room = |gland: &Gland| {
        let (below, above) = (least - gland.cable.min.value, gland.cable.max.value - most);
        if below < above { below.tidy() } else { above.tidy() }
    };
    let holds = |gland: &&Gland| gland.cable.holds(least) && gland.cable.holds(most);
    let fits = glands.iter().filter(holds).map(|gland| (gland, room(gland)));
    // The first of two that are alike.
    fits.reduce(|best, next| if next.1 > best.1 { next } else { best })
}

/// The insert of a port that seals a cable best, and the room the cable has in it; none if no insert holds it.
pub(super) fn sealed<'n>(resolved: &'n ResolvedRun<'n>) -> Traced<Option<(&'n Gland, Millimetres)>> {
    let (cable, port) = (resolved.cable, resolved.port);
    let glands = Traced::field(&port, at!(port.glands), &port.spec.glands);
    all((&read!(cable.least_diameter), &read!(cable.outside_diameter), &glands))
        .map(|(least, most, glands)| best_gland(glands, least.unwrap_or(most), most))
}

pub(super) fn compute(resolved: &ResolvedRun<'_>, target: &Target, hot: &Traced<Celsius>) -> HandlingLines {
    let (run, cable) = (resolved.run, resolved.cable);
    let practice = &target.practice;
    let diameter = read!(cable.outside_diameter);
    let room = sealed(resolved).map(|best| best.map(|(_, room)| room)).stated(Reason::NothingSeals);
    let bend = all((&diameter, &read!(cable.bend_radius)))
        .map(|(diameter, stated)| stated.unwrap_or_else(|| cable_handling::fixed_bend(diameter).rounded_up()));
    let lengths = all((&read!(run.outdoor), &read!(run.indoor)))
        .map(|(outdoor, indoor)| (outdoor, indoor.unwrap_or(Metres(0.0))));
    let air = all((&see!(cable.screening), hot))
        .map(|(screening, hot)| (screening.is_some_and(|screening| screening != Screening::UUtp), hot));
    let counted = all((&lengths, &air)).map(|((outdoor, indoor), (screened, hot))| {
        (channel_length::equivalent(outdoor, hot, screened) + indoor).tidy()
    });
    let longest = all((&lengths, &air, &practice.hot_length)).map(|((_, indoor), (screened, hot), most)| {
        // What one metre outdoors counts for.
        let metre = channel_length::equivalent(Metres(1.0), hot, screened);
        Metres(((most - indoor).0 / metre.0).max(0.0))
    });
    let take = all((&lengths, &practice.spare)).map(|((outdoor, indoor), spare)| {
        Metres(((outdoor + indoor).tidy().0 * (1.0 + spare.0 / 100.0) - 1e-9).ceil())
    });
    HandlingLines {
        gland_room: room.line(),
        bend_radius: bend.line(),
        pulling_radius: diameter.map(|diameter| cable_handling::pulling_bend(diameter).rounded_up()).line(),
        drip_loop: practice.drip_loop.written().line(),
        hot_length_in_hand: all((&counted, &practice.hot_length)).map(|(counted, most)| most - counted).line(),
        hot_length: counted.line(),
        longest_hot: longest.line(),
        to_take: take.line(),
    }
}
