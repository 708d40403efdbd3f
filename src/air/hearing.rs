//! What one receiver hears, sender by sender, and what that does to it.

use super::Air;
use super::coupling::{self, Coupling};
use super::limits::FLOOR;
use super::near::{Search, Side};
use super::station::Station;
use crate::physics::interference;
use crate::units::{Dbm, Decibels};

/// What a receiver hears from all senders but its partner.
#[derive(Debug, Clone, PartialEq)]
pub struct Heard {
    /// Noise of the receiver.
    pub noise: Dbm,
    /// Every sender that is heard, the strongest first.
    pub from: Vec<HeardFrom>,
    /// Senders at its own site that send into what it listens to, by their numbers: what they put into it is not computed.
    pub beside: Vec<usize>,
    /// All of it together in milliwatts: what comes along the path of the partner, and the rest.
    powers: [f64; 2],
}

/// What comes from one sender.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeardFrom {
    /// The sender, by its number among all stations.
    pub number: usize,
    /// Level at the input of the receiver.
    pub level: Dbm,
    /// Whether it stands where the partner does: what fades the one fades the other.
    pub same_path: bool,
    /// Angles, gains and losses.
    pub coupling: Coupling,
    /// What is lost for its polarisation.
    pub polarisation: Decibels,
    /// What is lost for its channel.
    pub filter: Decibels,
}

/// A receiver that a sender comes through to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Disturbed {
    /// Its number among all stations.
    pub number: usize,
    /// Level over its noise. None at one's own site, where it is not computed.
    pub over_noise: Option<Decibels>,
}

impl Heard {
    /// What is heard in an empty network.
    #[must_use]
    pub const fn nothing() -> Self {
        Self { noise: Dbm(f64::INFINITY), from: Vec::new(), beside: Vec::new(), powers: [0.0; 2] }
    }

    /// The same with the strongest sender weaker.
    #[must_use]
    pub fn with_strongest_weaker(&self, less: Decibels) -> Self {
        let mut heard = self.clone();
        if let Some(strongest) = heard.from.first_mut() {
            strongest.level = strongest.level - less;
        }
        heard.summed()
    }

    /// Adds up what is heard.
    fn summed(mut self) -> Self {
        self.powers = [true, false].map(|same_path| {
            let of_path = self.from.iter().filter(|from| from.same_path == same_path);
            of_path.map(|from| libm::exp10(from.level.0 / 10.0)).sum()
        });
        self
    }

    /// All of it together. None where nothing is heard.
    #[must_use]
    pub fn level(&self) -> Option<Dbm> {
        self.level_in(Decibels(0.0))
    }

    /// The same in a fade of the wanted path, which fades what comes along that path as well.
    fn level_in(&self, fade: Decibels) -> Option<Dbm> {
        let [along, others] = self.powers;
        let power = along * libm::exp10(-fade.0 / 10.0) + others;
        (power > 0.0).then(|| Dbm(10.0 * libm::log10(power)))
    }

    /// What it takes from the fade margin where nothing of it fades.
    #[must_use]
    pub fn degradation(&self) -> Decibels {
        self.degradation_in(Decibels(0.0))
    }

    /// The same in a fade of the wanted path.
    #[must_use]
    pub fn degradation_in(&self, fade: Decibels) -> Decibels {
        self.level_in(fade).map_or(Decibels(0.0), |level| interference::degradation(level - self.noise))
    }
}

impl Air<'_> {
    /// What a receiver hears.
    #[must_use]
    pub fn heard_by(&self, station: &Station<'_>) -> Heard {
        self.heard_instead(station, &[])
    }

    /// The same with some stations in place of those of the same name.
    #[must_use]
    pub fn heard_instead(&self, station: &Station<'_>, instead: &[Station<'_>]) -> Heard {
        let search = self.search(station, Side::Listens);
        let mut heard = Ear::of(station);
        heard.heard.beside = self.beside(station, instead);
        search.each(&self.senders, |found| {
            let sender = &self.stations[found.number];
            if !instead.iter().any(|other| other.named() == sender.named()) {
                heard.add(found.number, sender, found.filter);
            }
        });
        for sender in instead {
            let (Some(sends), Some(listens)) = (&sender.sends, &station.listens) else { continue };
            let filter = coupling::filtered(sends, listens).filter(|_| self.sees(station, sender));
            if let (Some(filter), Some(number)) = (filter, self.number_of(sender.named())) {
                heard.add(number, sender, filter);
            }
        }
        heard.done()
    }

    /// The same with every sender looked at: no index, no bound. It gives the same, and takes its time.
    #[must_use]
    pub fn heard_unculled(&self, station: &Station<'_>) -> Heard {
        let mut heard = Ear::of(station);
        heard.heard.beside = self.beside(station, &[]);
        self.search(station, Side::Listens)
            .all(Side::Sends, |found| heard.add(found.number, &self.stations[found.number], found.filter));
        heard.done()
    }

    /// The receivers of neighbours that a sender comes through to, the worst first.
    #[must_use]
    pub fn disturbed_by(&self, number: usize) -> Vec<Disturbed> {
        let sender = &self.stations[number];
        if self.neighbours == 0 || sender.sends.is_none() {
            return Vec::new();
        }
        let first = self.stations.len() - self.neighbours;
        let hearers = self.hearers(sender).into_iter().filter(|number| *number >= first);
        let heard = hearers.filter_map(|hearer| {
            let station = &self.stations[hearer];
            let filter = coupling::filtered(sender.sends.as_ref()?, station.listens.as_ref()?)?;
            let mut ear = Ear::of(station);
            ear.add(number, sender, filter);
            let heard = ear.done();
            let over_noise = heard.level().map(|level| level - heard.noise);
            (over_noise.is_some() || !heard.beside.is_empty()).then_some(Disturbed { number: hearer, over_noise })
        });
        let mut found: Vec<Disturbed> = heard.collect();
        let rank = |disturbed: &Disturbed| disturbed.over_noise.map_or(f64::INFINITY, |over| over.0);
        found.sort_by(|one, other| rank(other).total_cmp(&rank(one)).then(one.number.cmp(&other.number)));
        found
    }

    /// Those who hear a sender, by their numbers among the stations: at least all to whom it comes up to the floor.
    pub(super) fn hearers(&self, station: &Station<'_>) -> Vec<usize> {
        let mut found = Vec::new();
        self.search(station, Side::Sends).each(&self.listeners, |candidate| found.push(candidate.number));
        found
    }

    fn search<'a>(&'a self, station: &'a Station<'a>, side: Side) -> Search<'a> {
        Search { station, side, lowest: self.lowest, stations: &self.stations }
    }

    /// Senders of other hops at its site whose channel lies in what its half of the radio lets in.
    fn beside(&self, station: &Station<'_>, instead: &[Station<'_>]) -> Vec<usize> {
        let Some(here) = station.site().and_then(|site| self.at_site.get(&site)) else { return Vec::new() };
        let sends_in = |number: &&usize| {
            let other = &self.stations[**number];
            let other = instead.iter().find(|changed| changed.named() == other.named()).unwrap_or(other);
            other.named().document() != station.named().document() && other.sends_into_half_of(station)
        };
        here.iter().filter(sends_in).copied().collect()
    }

    /// Whether it listens where another sends at its site.
    pub(super) fn is_beside_a_sender(&self, station: &Station<'_>, instead: &[Station<'_>]) -> bool {
        !self.beside(station, instead).is_empty()
    }

    fn sees(&self, one: &Station<'_>, other: &Station<'_>) -> bool {
        let horizon = interference::horizon(one.altitude - self.lowest, other.altitude - self.lowest);
        one.at.distance(other.at) <= horizon
    }
}

/// A receiver while it is listened with.
struct Ear<'s> {
    station: &'s Station<'s>,
    heard: Heard,
}

impl<'s> Ear<'s> {
    fn of(station: &'s Station<'s>) -> Self {
        let noise = station.listens.as_ref().map_or(Dbm(f64::INFINITY), |listens| listens.noise);
        Self { station, heard: Heard { noise, ..Heard::nothing() } }
    }

    fn add(&mut self, number: usize, sender: &Station<'_>, filter: Decibels) {
        let station = self.station;
        let (Some(sends), Some(listens)) = (&sender.sends, &station.listens) else { return };
        // The partner is what is wanted, and one's own sender is not heard: the radio sees to that.
        if sender.named().document() == station.named().document() {
            return;
        }
        if sender.is_beside(station) {
            self.heard.beside.push(number);
            return;
        }
        let coupling = Coupling::between(sender, sends, station, listens);
        let polarisation = coupling.polarisation_loss(sender.polarisation, station.polarisation);
        let level = coupling::level(&coupling, sends, listens, [polarisation, filter]);
        if level - self.heard.noise < FLOOR {
            return;
        }
        let same_path = sender.is_beside_partner_of(station);
        self.heard.from.push(HeardFrom { number, level, same_path, coupling, polarisation, filter });
    }

    fn done(mut self) -> Heard {
        self.heard.from.sort_by(|one, other| other.level.0.total_cmp(&one.level.0).then(one.number.cmp(&other.number)));
        self.heard.beside.sort_unstable();
        self.heard.beside.dedup();
        self.heard.summed()
    }
}
