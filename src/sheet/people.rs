//! People near one end: how close they may come to the beam, and who stands closer.

use super::dish::aperture;
use super::line::{Line, Missing, lines};
use super::path::altitude;
use super::reason::Reason;
use crate::at;
use crate::network::ResolvedEnd;
use crate::physics::exposure::{PUBLIC, Sender, WORKERS};
use crate::units::{Degrees, Gigahertz, Given, Metres, WattsPerSquareMetre};

const KEEP_CLEAR: &str =
    "0 where 4 P / A is within the limit, else √(EIRP / (4 π S)); FCC OET Bulletin 65 (from memory)";

lines! {
    /// How close people may come in front of one end.
    PeopleLines {
        at_cover: WattsPerSquareMetre, "S", "power density at the cover of the antenna", "4 P / A, FCC OET Bulletin 65 (from memory)";
        public_distance: Metres, "", "distance for whoever passes, along the beam", KEEP_CLEAR;
        workers_distance: Metres, "", "distance for trained workers, along the beam", KEEP_CLEAR;
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
    own: &ResolvedEnd<'_>,
    sends: &Line<Given<Gigahertz>>,
    bearing: &Line<Degrees>,
) -> (PeopleLines, Vec<TooNear>) {
    let (end, dish) = (own.end, own.antenna);
    let sender = sends.value.as_ref().map_err(Clone::clone).and_then(|given| {
        let frequency = given.value;
        let diameter = aperture(dish, frequency);
        if diameter.0 <= 0.0 {
            return Err(Missing::new(Reason::DiameterNotAboveZero, at!(dish.diameter)));
        }
        Ok(Sender { frequency, power: end.transmit_power.value, gain: dish.gain.value, diameter })
    });
    let from = [&[at!(end.transmit_power), at!(dish.gain), at!(dish.diameter)], &sends.from[..]].concat();
    let of = |limit| Line::new(sender.clone().map(|sender| sender.distance(limit)), &from);
    let lines = PeopleLines {
        at_cover: Line::new(sender.clone().map(|sender| sender.at_aperture()), &from),
        public_distance: of(PUBLIC),
        workers_distance: of(WORKERS),
    };
    let near = match (lines.public_distance.get(), bearing.get()) {
        (Some(reach), Some(bearing)) if reach.0 > 0.0 => too_near(own, reach, bearing),
        _ => Vec::new(),
    };
    (lines, near)
}

/// Who is in the half of the world the antenna faces and within reach of its beam. That whole half is taken, not the beam
/// alone: reflections and aiming are then covered too.
fn too_near(own: &ResolvedEnd<'_>, reach: Metres, bearing: Degrees) -> Vec<TooNear> {
    let antenna_height = altitude(own).0 - own.site.ground_height.value;
    let spots = own.site.people.iter().enumerate();
    let near = spots.filter_map(|(number, spot)| {
        let (flat, up) = (spot.distance.value, (spot.height.value - antenna_height).0);
        let distance = Metres(libm::hypot(flat.0, up));
        let aside = (spot.bearing.value.0 - bearing.0).to_radians();
        (distance < reach && libm::cos(aside) >= 0.0).then_some(TooNear { number, distance })
    });
    near.collect()
}
