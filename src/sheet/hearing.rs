//! The air around the hops of a network, and where everything written that counts in it.

use std::collections::HashSet;
use std::sync::{Arc, OnceLock};

use super::traced::{Traced, all, read, see};
use crate::air::{Air, Heard, Own, Owner, Station};
use crate::network::{Document, ResolvedHop};
use crate::place::DocumentId;
use crate::spec::{EndName, Neighbour, Way};
use crate::units::Decibels;

/// Places without a value.
pub(super) type Inputs = Traced<()>;

/// What of a network is heard by whom, with the places it is written at.
#[derive(Debug, Default)]
pub struct Hearing<'n> {
    air: Air<'n>,
    /// Of every antenna, where it stands, what it sends and what it listens to: gathered when somebody asks.
    places: Vec<[OnceLock<Inputs>; 2]>,
    /// The receivers that hear most, by their numbers: found out when one hears too much.
    worst: OnceLock<HashSet<usize>>,
    /// Whether nobody will read what would help: looking for it takes most of the time of a hop that fails.
    unhelped: bool,
}

/// For so many receivers changes are tried; where more hear too much, a frequency plan is what they need.
const TRIED: usize = 100;

impl<'n> Hearing<'n> {
    /// That of the hops of a network and of its neighbours.
    #[must_use]
    pub fn of(hops: &[ResolvedHop<'n>], neighbours: &'n [Document<Neighbour>]) -> Self {
        let air = Air::of(hops, neighbours);
        let places = air.stations().iter().map(|_| [OnceLock::new(), OnceLock::new()]).collect();
        Self { air, places, worst: OnceLock::new(), unhelped: false }
    }

    /// The same for sheets whose findings are counted and whose help nobody reads.
    #[must_use]
    pub fn unhelped(self) -> Self {
        Self { unhelped: true, ..self }
    }

    /// Whether somebody reads what would help.
    pub(super) const fn is_helped(&self) -> bool {
        !self.unhelped
    }

    /// Who hears whom.
    #[must_use]
    pub const fn air(&self) -> &Air<'n> {
        &self.air
    }

    /// What a receiver of a hop hears. Missing where something of the hop is broken; what is broken elsewhere is not heard.
    pub(super) fn heard(&self, resolved: &ResolvedHop<'n>, end: EndName) -> Traced<Arc<Heard>> {
        let own = Own::of(resolved, end);
        let own = all((&listening(&own), &sending(&own))).map(|_| ());
        let Some(number) = self.air.number(resolved.hop.at, end) else {
            return own.map(|()| Arc::new(Heard::nothing()));
        };
        let heard = self.air.heard_by(&self.air.stations()[number]);
        let others = heard.from.iter().map(|from| from.number).chain(heard.beside.iter().copied());
        let others: Vec<&Inputs> = others.map(|number| self.sending(number)).collect();
        Traced::each(others).decided_by(&own).map(|_| Arc::new(heard))
    }

    /// Where what a station sends is written.
    pub(super) fn sending(&self, number: usize) -> &Inputs {
        self.places[number][0].get_or_init(|| match &self.air.stations()[number].owner {
            Owner::Hop(own) => sending(own),
            Owner::Neighbour(neighbour) => neighbour_sends(neighbour),
        })
    }

    /// Where what a station listens to is written.
    pub(super) fn listening(&self, number: usize) -> &Inputs {
        self.places[number][1].get_or_init(|| match &self.air.stations()[number].owner {
            Owner::Hop(own) => listening(own),
            Owner::Neighbour(neighbour) => neighbour_listens(neighbour),
        })
    }

    /// What both ends of a hop hear and put into neighbours: from whom by name, and how much.
    #[must_use]
    pub fn around(&self, resolved: &ResolvedHop<'_>) -> Vec<(String, u64)> {
        let mut list = Vec::new();
        for end in EndName::BOTH {
            let Some(number) = self.air.number(resolved.hop.at, end) else { continue };
            let heard = self.air.heard_by(self.station(number));
            let called = |number: usize| self.station(number).owner.to_string();
            list.push((end.to_string(), heard.noise.0.to_bits()));
            list.extend(heard.from.iter().map(|from| {
                let path = if from.same_path { " on the same path" } else { "" };
                (called(from.number) + path, from.level.0.to_bits())
            }));
            list.extend(heard.beside.iter().map(|number| (called(*number), 0)));
            let disturbed = self.air.disturbed_by(number);
            list.extend(
                disturbed.iter().map(|disturbed| {
                    (called(disturbed.number), disturbed.over_noise.map_or(1, |over| over.0.to_bits()))
                }),
            );
        }
        list
    }

    /// Whether a receiver is among those that hear most. Trying changes takes long, and a network in which nothing fits must not
    /// take hours to say so.
    pub(super) fn is_worth_mending(&self, hop: DocumentId, end: EndName) -> bool {
        if self.unhelped {
            return false;
        }
        let worst = self.worst.get_or_init(|| {
            let own =
                self.air.stations().iter().enumerate().filter(|(_, station)| matches!(station.owner, Owner::Hop(_)));
            let heard = own.map(|(number, station)| (self.air.heard_by(station).degradation(), number));
            let mut heard: Vec<(Decibels, usize)> = heard.collect();
            heard.sort_by(|one, other| other.0.0.total_cmp(&one.0.0).then(one.1.cmp(&other.1)));
            heard.into_iter().take(TRIED).map(|(_, number)| number).collect()
        });
        self.air.number(hop, end).is_some_and(|number| worst.contains(&number))
    }

    /// A station by its number.
    pub(super) fn station(&self, number: usize) -> &Station<'n> {
        &self.air.stations()[number]
    }
}

/// Where an antenna stands, where it looks and what it is.
fn standing(own: &Own<'_>, way: Way) -> Inputs {
    let Own { hop, end, far_end, site, far_site, antenna, .. } = *own;
    let here = all((&see!(site.position), &read!(site.ground_height), &read!(end.height)));
    let there = all((&see!(far_site.position), &read!(far_site.ground_height), &read!(far_end.height)));
    let dish = all((
        &read!(antenna.gain),
        &read!(antenna.gain_at),
        &see!(antenna.gain_by_frequency),
        &read!(antenna.diameter),
        &read!(antenna.cross_polar),
        &see!(antenna.pattern),
    ));
    let centre = match way {
        Way::AToB => read!(hop.channel.a_to_b),
        Way::BToA => read!(hop.channel.b_to_a),
    };
    let channel = all((&centre, &read!(hop.channel.bandwidth), &see!(hop.channel.polarisation)));
    let feeder = own.feeder.map_or_else(
        || Traced::constant(()),
        |feeder| all((&see!(feeder.loss_by_frequency), &see!(feeder.construction), &see!(feeder.inside))).map(|_| ()),
    );
    let losses = all((&see!(end.losses), &see!(end.feeder), &feeder));
    all((&channel, &here, &there, &dish, &losses)).map(|_| ())
}

fn sending(own: &Own<'_>) -> Inputs {
    let (end, radio) = (own.end, own.radio);
    all((&standing(own, own.name.outgoing()), &read!(end.transmit_power), &see!(radio.transmit_mask))).map(|_| ())
}

fn listening(own: &Own<'_>) -> Inputs {
    let radio = own.radio;
    let inputs = all((&standing(own, own.name.incoming()), &read!(radio.noise_figure), &see!(radio.receive_mask)));
    inputs.map(|_| ())
}

fn neighbour_stands(neighbour: &Document<Neighbour>) -> Inputs {
    let here = all((&see!(neighbour.position), &read!(neighbour.ground_height), &read!(neighbour.height)));
    let aim = all((&read!(neighbour.bearing), &read!(neighbour.elevation)));
    let dish = all((
        &read!(neighbour.gain),
        &read!(neighbour.diameter),
        &read!(neighbour.cross_polar),
        &see!(neighbour.pattern),
        &see!(neighbour.polarisation),
    ));
    all((&here, &aim, &dish)).map(|_| ())
}

fn neighbour_sends(neighbour: &Document<Neighbour>) -> Inputs {
    all((&see!(neighbour.sends), &neighbour_stands(neighbour))).map(|_| ())
}

fn neighbour_listens(neighbour: &Document<Neighbour>) -> Inputs {
    all((&see!(neighbour.listens), &neighbour_stands(neighbour))).map(|_| ())
}
