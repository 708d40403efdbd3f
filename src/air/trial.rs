//! What would be heard if something were changed.

use super::Air;
use super::owner::{Named, Own, Owner};
use super::station::{Station, retuned};
use crate::place::DocumentId;
use crate::spec::{Both, EndName, Polarisation};
use crate::units::{Decibels, Gigahertz};

/// Stations in place of those of the same name.
#[derive(Debug, Clone)]
pub struct Change<'a, 'n> {
    air: &'a Air<'n>,
    instead: Vec<Station<'n>>,
}

impl<'n> Air<'n> {
    /// This air with some stations in place of those of the same name.
    #[must_use]
    pub const fn with(&self, instead: Vec<Station<'n>>) -> Change<'_, 'n> {
        Change { air: self, instead }
    }

    /// A hop in another polarisation.
    #[must_use]
    pub fn with_polarisation(&self, hop: DocumentId, polarisation: Polarisation) -> Change<'_, 'n> {
        self.with(self.ends(hop).map(|station| Station { polarisation, ..station.clone() }).collect())
    }

    /// A hop on other channels, by way.
    #[must_use]
    pub fn with_channels(&self, hop: DocumentId, channels: Both<Gigahertz>) -> Change<'_, 'n> {
        self.with(self.ends(hop).map(|station| retuned(station, channels)).collect())
    }

    /// A hop whose two halves are exchanged, if both its radios can be either.
    #[must_use]
    pub fn with_halves_exchanged(&self, hop: DocumentId) -> Option<Change<'_, 'n>> {
        let ends: Vec<&Station<'n>> = self.ends(hop).collect();
        let Owner::Hop(Own { hop, .. }) = ends.first()?.owner else { return None };
        let exchanged = Both { a: hop.channel.b_to_a.value, b: hop.channel.a_to_b.value };
        let turned = ends.iter().map(|station| {
            let Owner::Hop(own) = station.owner else { return None };
            let same = |half: &crate::spec::Half| {
                half.transmit.holds(exchanged[own.name.outgoing()])
                    && half.receive.holds(exchanged[own.name.incoming()])
            };
            let found = own.radio.halves.iter().position(same)?;
            let half = own.radio.part(&"halves[i]", &[found], &own.radio.halves[found]);
            let owner = Owner::Hop(Own { half, ..own });
            Some(Station { owner, ..retuned(station, exchanged) })
        });
        Some(self.with(turned.collect::<Option<Vec<_>>>()?))
    }

    /// One sender with less power.
    #[must_use]
    pub fn with_less_power(&self, number: usize, less: Decibels) -> Change<'_, 'n> {
        let mut station = self.stations[number].clone();
        if let Some(sends) = &mut station.sends {
            sends.power = sends.power - less;
        }
        self.with(vec![station])
    }

    fn ends(&self, hop: DocumentId) -> impl Iterator<Item = &Station<'n>> {
        EndName::BOTH.into_iter().filter_map(move |end| self.station(hop, end))
    }
}

impl<'n> Change<'_, 'n> {
    /// The greatest threshold degradation, nothing faded, of the receivers that are changed. None if one of them would listen
    /// where another sends at its own site.
    #[must_use]
    pub fn of_its_own(&self) -> Option<Decibels> {
        let each = self.instead.iter().filter(|station| listens_here(station)).map(|station| self.degradation(station));
        each.reduce(|one, other| Some(Decibels(one?.0.max(other?.0)))).flatten()
    }

    /// Whether no receiver of the network that the change touches is degraded by more than a limit, nothing faded, or listens
    /// where another sends at its own site: neither those that are changed nor those that hear a changed sender before or after.
    #[must_use]
    pub fn keeps_within(&self, limit: Decibels) -> bool {
        let good = |station: &Station<'_>| self.degradation(station).is_some_and(|degradation| degradation <= limit);
        // Those that are changed first: most changes fail there, and the others need not be looked for.
        self.instead.iter().filter(|station| listens_here(station)).all(good) && self.touched().into_iter().all(good)
    }

    /// Whether some end at a site of what is changed listens where another sends there.
    #[must_use]
    pub fn mixes_halves(&self) -> bool {
        let here = |station: &Station<'n>| station.site().and_then(|site| self.air.at_site.get(&site));
        let beside = self.instead.iter().filter_map(here).flatten().map(|number| &self.air.stations[*number]);
        let others = beside.filter(|station| !self.changes(station));
        self.instead.iter().chain(others).any(|station| self.air.is_beside_a_sender(station, &self.instead))
    }

    fn degradation(&self, station: &Station<'_>) -> Option<Decibels> {
        let heard = self.air.heard_instead(station, &self.instead);
        heard.beside.is_empty().then(|| heard.degradation())
    }

    fn changes(&self, station: &Station<'_>) -> bool {
        self.instead.iter().any(|other| other.named() == station.named())
    }

    /// Those that hear a changed sender before or after and are not changed themselves.
    fn touched(&self) -> Vec<&Station<'n>> {
        let before = self.instead.iter().filter_map(|station| match station.named() {
            Named::Hop(hop, end) => self.air.station(hop, end),
            Named::Neighbour(_) => None,
        });
        let senders: Vec<&Station<'n>> = before.chain(&self.instead).collect();
        let mut numbers: Vec<usize> = senders.iter().flat_map(|station| self.air.hearers(station)).collect();
        numbers.sort_unstable();
        numbers.dedup();
        let others = numbers.into_iter().map(|number| &self.air.stations[number]);
        others.filter(|station| !self.changes(station) && listens_here(station)).collect()
    }
}

/// Whether it is a receiver of the network.
fn listens_here(station: &Station<'_>) -> bool {
    station.listens.is_some() && matches!(station.owner, Owner::Hop(_))
}
