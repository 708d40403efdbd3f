//! What comes from one antenna through another.

use super::station::{Listens, Sends, Station};
use crate::physics::atmosphere::{self, Air as Parcel};
use crate::physics::gas::Spectrum;
use crate::physics::off_axis::off_axis;
use crate::physics::{free_space, interference};
use crate::spec::Polarisation;
use crate::units::{Dbi, Dbm, Decibels, Degrees, Gigahertz, Megahertz, Metres};

/// Between one antenna that sends and one that listens, whatever they send and listen to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coupling {
    /// From antenna to antenna.
    pub distance: Metres,
    /// How far off the axis of the sending antenna.
    pub off_sender: Degrees,
    /// How far off the axis of the listening one.
    pub off_receiver: Degrees,
    /// Gain of the sending antenna in that direction.
    pub sent: Dbi,
    /// The same in the other polarisation.
    pub sent_crossed: Dbi,
    /// Gain of the listening antenna in that direction.
    pub heard: Dbi,
    /// The same in the other polarisation.
    pub heard_crossed: Dbi,
    /// Free-space loss.
    pub free_space: Decibels,
    /// Gas loss, in the reference atmosphere at the mean height of both.
    pub gas: Decibels,
}

impl Coupling {
    /// From a sender to a receiver, at the frequency that is sent.
    #[must_use]
    pub fn between(from: &Station<'_>, sends: &Sends, to: &Station<'_>, listens: &Listens) -> Self {
        let (frequency, distance) = (sends.frequency, from.at.distance(to.at));
        let off_sender = off_axis(from.at, from.aimed_at, to.at);
        let off_receiver = off_axis(to.at, to.aimed_at, from.at);
        let (sent, heard) = (sends.aerial.towards(off_sender), listens.aerial.towards(off_receiver));
        Self {
            distance,
            off_sender,
            off_receiver,
            sent,
            sent_crossed: sends.aerial.crossed(sent),
            heard,
            heard_crossed: listens.aerial.crossed(heard),
            free_space: free_space::loss(frequency, distance),
            gas: gas(frequency, from, to, distance),
        }
    }

    /// What of the power comes through where both are of one polarisation.
    #[must_use]
    pub fn through(&self) -> Decibels {
        Decibels(self.sent.0 + self.heard.0) - self.free_space - self.gas
    }

    /// How much less comes through for the polarisations of the two.
    #[must_use]
    pub fn polarisation_loss(&self, sent: Polarisation, heard: Polarisation) -> Decibels {
        let crossed = || {
            interference::polarisation_discrimination([self.sent, self.sent_crossed], [self.heard, self.heard_crossed])
        };
        match (sent, heard) {
            // Two carriers, one in the polarisation that is listened to: both come through.
            (Polarisation::Dual, _) => Decibels(-10.0 * libm::log10(1.0 + libm::exp10(-crossed().0 / 10.0))),
            // One of the two that listen has the polarisation that is sent.
            (_, Polarisation::Dual) => Decibels(0.0),
            (one, other) if one == other => Decibels(0.0),
            _ => crossed(),
        }
    }
}

/// Gas loss over a straight distance, in the reference atmosphere at the mean height. None above the troposphere.
fn gas(frequency: Gigahertz, from: &Station<'_>, to: &Station<'_>, distance: Metres) -> Decibels {
    let middle = Metres(f64::midpoint(from.altitude.0, to.altitude.0));
    gas_at(frequency, middle).map_or(Decibels(0.0), |attenuation| Decibels(attenuation * distance.0 / 1000.0))
}

/// Gas attenuation in the reference atmosphere, decibels a kilometre.
pub(super) fn gas_at(frequency: Gigahertz, height: Metres) -> Option<f64> {
    let parcel: Parcel = atmosphere::reference(height).ok()?;
    Some(Spectrum::of(&parcel).specific_attenuation(frequency).0)
}

/// How much less comes through because the channels do not lie on each other; none where they do not touch.
#[must_use]
pub(super) fn filtered(sends: &Sends, listens: &Listens) -> Option<Decibels> {
    crate::physics::filter::discrimination(
        &sends.mask,
        sends.bandwidth,
        &listens.mask,
        listens.bandwidth,
        offset(sends, listens),
    )
}

/// How far the channel that is sent lies above the one that is listened to.
fn offset(sends: &Sends, listens: &Listens) -> Megahertz {
    Megahertz((sends.frequency - listens.frequency).0 * 1000.0)
}

/// Level at the input of a receiver.
pub(super) fn level(coupling: &Coupling, sends: &Sends, listens: &Listens, losses: [Decibels; 2]) -> Dbm {
    let [polarisation, filter] = losses;
    sends.power + coupling.through() - listens.loss - polarisation - filter
}
