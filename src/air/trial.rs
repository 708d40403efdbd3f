//! What would be heard if something were changed.

use super::Air;
use super::station::{Named, Station};
use crate::units::Decibels;

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
}

impl<'n> Change<'_, 'n> {
    /// The greatest threshold degradation, nothing faded, of all receivers that the change touches: those that are changed
    /// and those that hear a changed sender before or after. None if one of them would listen where another sends at its own
    /// site.
    #[must_use]
    pub fn worst(&self) -> Option<(Option<Named>, Decibels)> {
        let mut worst = (None, Decibels(0.0));
        for station in self.touched() {
            let heard = self.air.heard_instead(station, &self.instead);
            if !heard.beside.is_empty() {
                return None;
            }
            let degradation = heard.degradation();
            if degradation > worst.1 {
                worst = (Some(station.named()), degradation);
            }
        }
        Some(worst)
    }

    fn touched(&self) -> Vec<&Station<'n>> {
        let changed = |station: &Station<'_>| self.instead.iter().any(|other| other.named() == station.named());
        let before = self.air.stations.iter().filter(|station| changed(station));
        let senders: Vec<&Station<'n>> = before.chain(&self.instead).collect();
        let mut numbers: Vec<usize> = senders.iter().flat_map(|station| self.air.hearers(station)).collect();
        numbers.sort_unstable();
        numbers.dedup();
        let others = numbers.into_iter().map(|number| &self.air.stations[number]).filter(|station| !changed(station));
        self.instead.iter().chain(others).filter(|station| station.listens.is_some()).collect()
    }
}
