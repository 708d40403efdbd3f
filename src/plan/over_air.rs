//! What lies between the hops of a problem, out of the air.

use std::collections::{BTreeMap, HashMap};

use crate::air::{Aerial, Air, Owner, Station};
use crate::network::Document;
use crate::physics::gas::Spectrum;
use crate::physics::off_axis::off_axis;
use crate::physics::{atmosphere, filter, free_space, interference};
use crate::place::DocumentId;
use crate::spec::{self, Polarisation};
use crate::units::{Decibels, Gigahertz, Megahertz, Metres};

use super::search::{Candidate, End, Ether};

/// What counts for a sender into a receiver on its channel at one site: enough for no plan to want it.
const BESIDE: f64 = 1e9;

/// The air with the hops of a problem in it.
pub(super) struct OverAir<'a, 'n> {
    air: &'a Air<'n>,
    /// Of each hop of the problem the numbers of its stations.
    stations: Vec<[Option<usize>; 2]>,
    /// Whether each may change.
    moving: Vec<bool>,
    /// Hops of the problem by their stations.
    hops: HashMap<usize, usize>,
    classes: Vec<[usize; 2]>,
    aerials: HashMap<(DocumentId, u64), Aerial>,
}

impl<'a, 'n> OverAir<'a, 'n> {
    pub(super) fn of(air: &'a Air<'n>, stations: Vec<[Option<usize>; 2]>, candidates: &[Candidate]) -> Self {
        let moving = candidates.iter().map(|candidate| candidate.choices.len() > 1).collect();
        let numbered = stations.iter().enumerate();
        let hops = numbered.flat_map(|(hop, both)| both.iter().flatten().map(move |station| (*station, hop))).collect();
        let mut known = BTreeMap::new();
        let classes = stations.iter().map(|both| {
            both.map(|number| {
                let next = known.len();
                *known.entry(number.map(|number| class(&air.stations()[number]))).or_insert(next)
            })
        });
        let classes = classes.collect();
        let mut made = Self { air, stations, moving, hops, classes, aerials: HashMap::new() };
        for (hop, candidate) in candidates.iter().enumerate() {
            for frequency in candidate.choices.iter().flat_map(|choice| choice.sent) {
                for end in 0..2 {
                    let Some(Owner::Hop(own)) = made.station(End { hop, end }).map(|station| station.owner) else {
                        continue;
                    };
                    made.aerials
                        .entry(key(own.antenna, frequency))
                        .or_insert_with(|| Aerial::of(own.antenna, frequency));
                }
            }
        }
        made
    }

    fn station(&self, end: End) -> Option<&'a Station<'n>> {
        self.stations[end.hop][end.end].map(|number| &self.air.stations()[number])
    }

    /// The antenna of a station at a frequency; that of a neighbour, and one nobody asked for, at its own.
    fn aerial<'s>(&'s self, station: &'s Station<'_>, own: &'s Aerial, frequency: Gigahertz) -> &'s Aerial {
        match station.owner {
            Owner::Hop(hop) => self.aerials.get(&key(hop.antenna, frequency)).unwrap_or(own),
            Owner::Neighbour(_) => own,
        }
    }
}

fn key(antenna: &Document<spec::Antenna>, frequency: Gigahertz) -> (DocumentId, u64) {
    (antenna.at, frequency.0.to_bits())
}

/// What is sent how wide and by which mask, and the same of what is listened to.
fn class(station: &Station<'_>) -> [Option<(u64, usize)>; 2] {
    let sends = station.sends.as_ref().map(|sends| (sends.bandwidth, std::sync::Arc::as_ptr(&sends.mask)));
    let listens = station.listens.as_ref().map(|listens| (listens.bandwidth, std::sync::Arc::as_ptr(&listens.mask)));
    [sends, listens].map(|side| side.map(|(width, mask)| (width.0.to_bits(), mask.addr())))
}

impl Ether for OverAir<'_, '_> {
    fn near(&self, hop: usize) -> Vec<usize> {
        // What hops that stay bring each other is asked for at once.
        (0..self.stations.len()).filter(|other| self.moving[hop] || self.moving[*other]).collect()
    }

    fn constant(&self, to: End) -> f64 {
        let Some(station) = self.station(to).filter(|_| !self.moving[to.hop]) else { return 0.0 };
        let heard = self.air.heard_by(station);
        let stays = |number: &usize| self.hops.get(number).is_some_and(|hop| !self.moving[*hop]);
        let levels = heard.from.iter().filter(|from| stays(&from.number)).map(|from| from.level);
        interference::sum(levels).map_or(0.0, |level| ratio(level - heard.noise))
    }

    fn over_noise(&self, from: End, to: End, sent: &[Gigahertz]) -> Option<Vec<[f64; 2]>> {
        let (sender, receiver) = (self.station(from)?, self.station(to)?);
        let (sends, listens) = (sender.sends.as_ref()?, receiver.listens.as_ref()?);
        if sender.is_beside(receiver) {
            return Some(vec![[BESIDE; 2]; sent.len()]);
        }
        let distance = sender.at.distance(receiver.at);
        let heights = [sender, receiver].map(|station| station.altitude - self.air.lowest());
        if distance > interference::horizon(heights[0], heights[1]) {
            return None;
        }
        let off_sender = off_axis(sender.at, sender.aimed_at, receiver.at);
        let off_receiver = off_axis(receiver.at, receiver.aimed_at, sender.at);
        let in_clear_air = |frequency: Gigahertz| {
            let (one, other) =
                (self.aerial(sender, &sends.aerial, frequency), self.aerial(receiver, &listens.aerial, frequency));
            let (out, back) = (one.towards(off_sender), other.towards(off_receiver));
            let crossed =
                interference::polarisation_discrimination([out, one.crossed(out)], [back, other.crossed(back)]);
            let level = sends.power + out + back - listens.loss - free_space::loss(frequency, distance);
            (level - listens.noise, crossed)
        };
        let ends = [sent.first(), sent.last()].into_iter().flatten();
        // Gas takes some more, and both ends of a band are alike to some decibels.
        let most = ends.map(|frequency| in_clear_air(*frequency).0.0).fold(f64::NEG_INFINITY, f64::max);
        if most < crate::air::FLOOR.0 {
            return None;
        }
        let middle = Metres(f64::midpoint(sender.altitude.0, receiver.altitude.0));
        let spectrum = atmosphere::reference(middle).ok().map(|air| Spectrum::of(&air));
        let powers = sent.iter().map(|frequency| {
            let (over_noise, crossed) = in_clear_air(*frequency);
            let gas = spectrum.as_ref().map(|spectrum| spectrum.specific_attenuation(*frequency) * distance);
            let like = ratio(over_noise - gas.unwrap_or_default());
            [like, like * ratio(-crossed)]
        });
        Some(powers.collect())
    }

    fn passed(&self, from: End, sent: Gigahertz, to: End, heard: Gigahertz) -> f64 {
        let both = || Some((self.station(from)?.sends.as_ref()?, self.station(to)?.listens.as_ref()?));
        let Some((sends, listens)) = both() else { return 0.0 };
        let offset = Megahertz((sent - heard).0 * 1000.0);
        filter::discrimination(&sends.mask, sends.bandwidth, &listens.mask, listens.bandwidth, offset)
            .map_or(0.0, |lost| ratio(-lost))
    }

    fn class(&self, end: End) -> usize {
        self.classes[end.hop][end.end]
    }
}

fn ratio(decibels: Decibels) -> f64 {
    libm::exp10(decibels.0 / 10.0)
}

/// The only choice of a neighbour: what it sends, and what it listens to as if its partner sent it.
pub(super) fn neighbour(station: &Station<'_>) -> Option<([Gigahertz; 2], Polarisation)> {
    let (sends, listens) = (&station.sends, &station.listens);
    let sent = sends.as_ref().map(|sends| sends.frequency).or(listens.as_ref().map(|listens| listens.frequency))?;
    let heard = listens.as_ref().map_or(sent, |listens| listens.frequency);
    Some(([sent, heard], station.polarisation))
}
