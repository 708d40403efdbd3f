//! What would be heard if something were changed.

use super::Air;
use super::station::{Named, Own, Owner, Station, retuned};
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
    /// The greatest threshold degradation, nothing faded, of all receivers of the network that the change touches: those that
    /// are changed and those that hear a changed sender before or after. None if one of them would listen where another sends
    /// at its own site.
    #[must_use]
    pub fn worst(&self) -> Option<Decibels> {
        let mut worst = Decibels(0.0);
        for station in self.touched() {
            let heard = self.air.heard_instead(station, &self.instead);
            if !heard.beside.is_empty() {
                return None;
            }
            let degradation = heard.degradation();
            worst = if degradation > worst { degradation } else { worst };
        }
        Some(worst)
    }

    fn touched(&self) -> Vec<&Station<'n>> {
        let changed = |station: &Station<'_>| self.instead.iter().any(|other| other.named() == station.named());
        let before = self.instead.iter().filter_map(|station| match station.named() {
            Named::Hop(hop, end) => self.air.station(hop, end),
            Named::Neighbour(_) => None,
        });
        let senders: Vec<&Station<'n>> = before.chain(&self.instead).collect();
        let mut numbers: Vec<usize> = senders.iter().flat_map(|station| self.air.hearers(station)).collect();
        numbers.sort_unstable();
        numbers.dedup();
        let others = numbers.into_iter().map(|number| &self.air.stations[number]).filter(|station| !changed(station));
        let all = self.instead.iter().chain(others);
        all.filter(|station| station.listens.is_some() && matches!(station.owner, Owner::Hop(_))).collect()
    }
}
