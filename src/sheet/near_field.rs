//! What antennas lose that stand too close together for their gains to count in full.

use super::aperture::aperture;
use super::reason::Reason;
use super::traced::{AsTraced, Traced, all};
use crate::network::Document;
use crate::physics::near_field::{EDGE_FIELD, Pair};
use crate::spec::Antenna;
use crate::units::{Decibels, Gigahertz, Metres};

/// Less than this is not seen in a line that has one decimal.
const SEEN: Decibels = Decibels(0.05);

/// What one direction loses.
pub(super) struct NearField {
    /// As the level counts it.
    pub(super) counted: Traced<Decibels>,
    /// As a line; unstated where it is too little to be seen in both directions.
    pub(super) line: Traced<Decibels>,
}

impl NearField {
    /// The loss at the frequency of a direction and a distance; `back` is the frequency of the other one.
    pub(super) fn of(
        antennas: [&Document<Antenna>; 2],
        [there, back]: [&Traced<Gigahertz>; 2],
        distance: &impl AsTraced<Value = Metres>,
    ) -> Self {
        let at = |frequency| loss(antennas, frequency, distance);
        let (counted, other) = (at(there), at(back));
        let line = all((&counted, &other))
            .judge(|(counted, other)| if counted < SEEN && other < SEEN { Err(Reason::FarField) } else { Ok(counted) });
        Self { counted, line }
    }
}

fn loss(
    antennas: [&Document<Antenna>; 2],
    frequency: &Traced<Gigahertz>,
    distance: &impl AsTraced<Value = Metres>,
) -> Traced<Decibels> {
    let [one, two] = antennas.map(|antenna| aperture(antenna, frequency));
    all((&one, &two, frequency, distance)).check(|(one, two, frequency, distance)| {
        Pair::new(frequency, [one, two], distance, EDGE_FIELD).loss().ok_or(Reason::TooNearToTell)
    })
}
