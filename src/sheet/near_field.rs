//! What antennas lose that stand too close together for their gains to count in full.

use super::aperture::aperture;
use super::reason::Reason;
use super::traced::{AsTraced, Traced, all};
use crate::network::Document;
use crate::physics::near_field::{EDGE_FIELD, Pair};
use crate::spec::Antenna;
use crate::units::{Decibels, Gigahertz, Metres};

/// The loss at a frequency and a distance; unstated where there is none.
pub(super) fn loss(
    antennas: [&Document<Antenna>; 2],
    frequency: &Traced<Gigahertz>,
    distance: &impl AsTraced<Value = Metres>,
) -> Traced<Decibels> {
    let [one, two] = antennas.map(|antenna| aperture(antenna, frequency));
    let loss = all((&one, &two, frequency, distance)).check(|(one, two, frequency, distance)| {
        Pair::new(frequency, [one, two], distance, EDGE_FIELD).loss().ok_or(Reason::TooNearToTell)
    });
    loss.unless(|loss| (loss.0 <= 0.0).then_some(Reason::FarField))
}
