//! People near one end: how close they may come to the beam, and who stands closer.

use super::aperture::{above_zero, aperture};
use super::gain;
use super::geometry::altitude;
use super::line::{Line, lines};
use super::method::{Method, cited};
use super::missing::Missing;
use super::shown::KeepClear;
use super::traced::{Traced, all, read, see};
use crate::at;
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::exposure::{PUBLIC, Sender, WORKERS};
use crate::units::{Dbm, Decibels, Degrees, Gigahertz, Given, Metres, WattsPerSquareMetre};

pub(super) const KEEP_CLEAR: Method =
    cited("0 where 4 P / A is within the limit, else √(EIRP / (4 π S)); FCC OET Bulletin 65 (from memory)");

const SET_POWER: &str = "the greatest the radio can be set to, or the power set where the licence fixes a ceiling; its tolerance and a second carrier come on top, and losses on the way to the antenna are not taken off";

lines! {
    /// How close people may come in front of one end.
    PeopleLines {
        set_power: Dbm, "", "greatest power to be set", SET_POWER;
        at_cover: WattsPerSquareMetre, "S", "power density at the cover of the antenna", cited("4 P / A, FCC OET Bulletin 65 (from memory)");
        public_distance: KeepClear, "", "distance for whoever passes, along the beam", KEEP_CLEAR;
        workers_distance: KeepClear, "", "distance for trained workers, along the beam", KEEP_CLEAR;
    }
}

/// Somewhere people may be, nearer to the front of an antenna than the distance for whoever passes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TooNear {
    /// Its number among those of the site.
    pub number: usize,
    /// Straight distance from the antenna.
    pub distance: Metres,
}

/// The lines, and who stands too near.
pub(super) fn compute(
    hop: &ResolvedHop<'_>,
    own: &ResolvedEnd<'_>,
    sends: &Line<Given<Gigahertz>>,
    bearing: &Line<Degrees>,
) -> (PeopleLines, Vec<TooNear>) {
    let lines = lines(hop, own, sends);
    let near = match (lines.public_distance.get(), bearing.get(), altitude(own).get()) {
        (Some(KeepClear(reach)), Some(bearing), Some(altitude)) if reach.0 > 0.0 => {
            too_near(own, altitude, reach, bearing)
        }
        _ => Vec::new(),
    };
    (lines, near)
}

/// How far to keep from the antenna of an end, by the frequency it sends on.
pub(super) fn lines(hop: &ResolvedHop<'_>, own: &ResolvedEnd<'_>, sends: &Traced<Given<Gigahertz>>) -> PeopleLines {
    let (dish, radio) = (own.antenna, own.radio);
    let set_power = greatest_set(hop, own);
    let document = hop.hop;
    // Two carriers warm together.
    let carriers = see!(document.channel.polarisation)
        .map(|polarisation| Decibels(10.0 * libm::log10(f64::from(polarisation.carriers()))));
    let power = all((&set_power, &read!(radio.transmit_tolerance), &carriers))
        .map(|(power, tolerance, carriers)| power + tolerance.unwrap_or(Decibels(0.0)) + carriers);
    let frequency = sends.map(|given| given.value);
    let gain = all((&gain::at(dish, &frequency), &read!(dish.gain_tolerance)))
        .map(|(gain, tolerance)| gain + tolerance.unwrap_or(Decibels(0.0)));
    // A diameter that cannot be is one that is written: where none is, it follows from the gain.
    let at = at!(dish.diameter);
    let diameter =
        aperture(dish, &frequency).try_map(|diameter| above_zero(diameter).map_err(|reason| Missing::new(reason, at)));
    let sender = all((&power, &gain, &diameter, &frequency)).map(|(power, gain, diameter, frequency)| Sender {
        frequency,
        power,
        gain,
        diameter,
    });
    let of = |limit| sender.map(|sender| KeepClear(sender.distance(limit))).line();
    PeopleLines {
        set_power: set_power.line(),
        at_cover: sender.map(|sender| sender.at_aperture()).line(),
        public_distance: of(PUBLIC),
        workers_distance: of(WORKERS),
    }
}

/// The greatest power that may be set here: what the radio can, unless the licence fixes a ceiling and with it the setting.
fn greatest_set(hop: &ResolvedHop<'_>, own: &ResolvedEnd<'_>) -> Traced<Dbm> {
    let (document, end, radio) = (hop.hop, own.end, own.radio);
    let ceilings = (&read!(document.licence.max_power), &read!(document.licence.max_eirp));
    let powers = all((&read!(end.transmit_power), &read!(radio.transmit_power), ceilings.0, ceilings.1));
    powers.map(|(set, [_, most], max_power, max_eirp)| {
        let fixed = max_power.is_some() || max_eirp.is_some();
        if fixed || set > most { set } else { most }
    })
}

/// Who is in the half of the world the antenna faces and within reach of its beam. That whole half is taken, not the beam
/// alone: reflections and aiming are then covered too.
fn too_near(own: &ResolvedEnd<'_>, altitude: Metres, reach: Metres, bearing: Degrees) -> Vec<TooNear> {
    let antenna_height = altitude - own.site.ground_height.value;
    let spots = own.site.people.iter().enumerate();
    let near = spots.filter_map(|(number, spot)| {
        let (flat, up) = (spot.distance.value, (spot.height.value - antenna_height).0);
        let distance = Metres(libm::hypot(flat.0, up));
        let aside = (spot.bearing.value.0 - bearing.0).to_radians();
        (distance < reach && libm::cos(aside) >= 0.0).then_some(TooNear { number, distance })
    });
    near.collect()
}
