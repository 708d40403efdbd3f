//! Who is near enough to be heard: senders, and receivers, by channel and place.
//!
//! What is left out is left out by a bound and not by a guess. Beyond the radio horizon of the two antennas nothing is computed.
//! Nearer than that a pair is passed over only if the most that both antennas may gain at these angles or further off, over
//! free space and the thinnest air of the network, does not come up to the floor.

use std::collections::HashMap;
use std::sync::Arc;

use rstar::{AABB, PointDistance, RTree, RTreeObject};

use super::aerial::Bound;
use super::coupling::{filtered, gas_at};
use super::limits::{FLOOR, SAME_SITE};
use super::station::Station;
use crate::physics::filter::Mask;
use crate::physics::{free_space, interference};
use crate::units::{Dbi, Dbm, Decibels, DecibelsPerKilometre, Gigahertz, Megahertz, Metres};

/// Heights at which the air is looked at for the least it takes.
const AIR_STEPS: Metres = Metres(100.0);
/// Between two of them the air may take this much less than at either.
const BETWEEN: f64 = 0.95;

/// Senders, or receivers, on one channel.
#[derive(Debug)]
pub(super) struct OnChannel {
    frequency: Gigahertz,
    tree: RTree<Mark>,
    /// The most that comes of power less losses and noise, and of gain: of a sender its e.i.r.p., of a receiver its gain over
    /// its noise.
    most: f64,
    /// The highest over the lowest ground.
    highest: Metres,
    /// The least that gas takes in a kilometre.
    least_gas: DecibelsPerKilometre,
}

/// An antenna in the index.
#[derive(Debug)]
struct Mark {
    at: [f64; 3],
    axis: [f64; 3],
    /// Power at the antenna of a sender; of a receiver what is lost behind its antenna and its noise, taken off nothing.
    strength: f64,
    bound: Arc<Bound>,
    height: Metres,
    number: usize,
}

impl RTreeObject for Mark {
    type Envelope = AABB<[f64; 3]>;

    fn envelope(&self) -> Self::Envelope {
        AABB::from_point(self.at)
    }
}

impl PointDistance for Mark {
    fn distance_2(&self, point: &[f64; 3]) -> f64 {
        let [x, y, z] = between(self.at, *point);
        x * x + y * y + z * z
    }
}

/// Which of the two an index is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    /// Those that send.
    Sends,
    /// Those that listen.
    Listens,
}

/// What one side of a pair brings into the bound.
struct Part<'s> {
    frequency: Gigahertz,
    bandwidth: Megahertz,
    mask: &'s Arc<Mask>,
    bound: &'s Arc<Bound>,
    strength: f64,
    gain: Dbi,
}

impl Side {
    fn part<'s>(self, station: &'s Station<'_>) -> Option<Part<'s>> {
        match self {
            Self::Sends => station.sends.as_ref().map(|sends| Part {
                frequency: sends.frequency,
                bandwidth: sends.bandwidth,
                mask: &sends.mask,
                bound: &sends.bound,
                // Of two carriers both may come through.
                strength: sends.power.0 + 10.0 * libm::log10(f64::from(station.polarisation.carriers())),
                gain: sends.aerial.gain,
            }),
            Self::Listens => station.listens.as_ref().map(|listens| Part {
                frequency: listens.frequency,
                bandwidth: listens.bandwidth,
                mask: &listens.mask,
                bound: &listens.bound,
                strength: -listens.loss.0 - listens.noise.0,
                gain: listens.aerial.gain,
            }),
        }
    }
}

/// Groups the senders, or the receivers, of a list.
pub(super) fn by_channel(stations: &[Station<'_>], lowest: Metres, side: Side) -> Vec<OnChannel> {
    let mut groups: HashMap<(u64, u64, *const Mask), Vec<usize>> = HashMap::new();
    let mut order = Vec::new();
    for (number, station) in stations.iter().enumerate() {
        let Some(part) = side.part(station) else { continue };
        let key = (part.frequency.0.to_bits(), part.bandwidth.0.to_bits(), Arc::as_ptr(part.mask));
        let group = groups.entry(key).or_insert_with(|| {
            order.push(key);
            Vec::new()
        });
        group.push(number);
    }
    let air = Heights::of(stations);
    order.iter().filter_map(|key| OnChannel::of(&groups[key], stations, lowest, side, &air)).collect()
}

/// The heights between which the antennas of a network stand.
struct Heights {
    least: f64,
    most: f64,
}

impl Heights {
    fn of(stations: &[Station<'_>]) -> Self {
        let heights = stations.iter().map(|station| station.altitude.0);
        let (least, most) = heights
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), height| (least.min(height), most.max(height)));
        Self { least, most }
    }

    /// The least that gas takes anywhere between them.
    fn least_gas(&self, frequency: Gigahertz) -> DecibelsPerKilometre {
        let mut least = f64::INFINITY;
        let mut height = self.least;
        loop {
            // Above the troposphere nothing is taken.
            least = least.min(gas_at(frequency, Metres(height)).unwrap_or_default());
            if height >= self.most {
                break;
            }
            height = (height + AIR_STEPS.0).min(self.most);
        }
        DecibelsPerKilometre(BETWEEN * if least.is_finite() { least } else { 0.0 })
    }
}

impl OnChannel {
    fn of(numbers: &[usize], stations: &[Station<'_>], lowest: Metres, side: Side, air: &Heights) -> Option<Self> {
        let first = side.part(&stations[*numbers.first()?])?;
        let mut most = f64::NEG_INFINITY;
        let mut highest = Metres(0.0);
        let mut marks = Vec::with_capacity(numbers.len());
        for number in numbers {
            let station = &stations[*number];
            let Some(part) = side.part(station) else { continue };
            let height = station.altitude - lowest;
            most = most.max(part.strength + part.gain.0);
            highest = if height > highest { height } else { highest };
            marks.push(Mark {
                at: station.at.as_array(),
                axis: axis(station),
                strength: part.strength,
                bound: Arc::clone(part.bound),
                height,
                number: *number,
            });
        }
        Some(Self {
            frequency: first.frequency,
            tree: RTree::bulk_load(marks),
            most,
            highest,
            least_gas: air.least_gas(first.frequency),
        })
    }
}

/// A line of sight that may matter: the station, and what their channels let through.
pub(super) struct Candidate {
    pub(super) number: usize,
    pub(super) filter: Decibels,
}

/// Looks for what a station hears, or for who hears it.
pub(super) struct Search<'s> {
    pub(super) station: &'s Station<'s>,
    /// The side of `station`.
    pub(super) side: Side,
    pub(super) lowest: Metres,
    pub(super) stations: &'s [Station<'s>],
}

impl Search<'_> {
    /// Hands everybody of the other side to `take` who may come up to the floor.
    pub(super) fn each(&self, groups: &[OnChannel], mut take: impl FnMut(Candidate)) {
        let Some(own) = self.side.part(self.station) else { return };
        let (at, aim) = (self.station.at.as_array(), axis(self.station));
        let height = self.station.altitude - self.lowest;
        for group in groups {
            let Some(filter) = self.filter(group) else { continue };
            let frequency = match self.side {
                Side::Sends => own.frequency,
                Side::Listens => group.frequency,
            };
            let one_metre = free_space::loss(frequency, Metres(1.0)).0;
            // Beyond this, whatever the angles.
            let furthest = interference::culling_distance(
                Dbm(own.strength + group.most),
                own.gain,
                Dbm(FLOOR.0 + filter.0),
                frequency,
                group.least_gas,
            );
            let horizon = interference::horizon(height, group.highest);
            let radius = furthest.0.min(horizon.0);
            for mark in group.tree.locate_within_distance(at, radius * radius) {
                let line = between(at, mark.at);
                let distance = dot(line, line).sqrt();
                if distance > interference::horizon(height, mark.height).0 {
                    continue;
                }
                if distance > SAME_SITE.0 {
                    let (here, there) = (dot(aim, line) / distance, -dot(mark.axis, line) / distance);
                    let gains = own.bound.beyond(here) + mark.bound.beyond(there);
                    let loss = one_metre + 20.0 * libm::log10(distance) + group.least_gas.0 * distance / 1000.0;
                    if own.strength + mark.strength + gains - loss - filter.0 < FLOOR.0 {
                        continue;
                    }
                }
                take(Candidate { number: mark.number, filter });
            }
        }
    }

    /// Hands everybody of the other side to `take`, whatever the bound says: for a test of the bound.
    pub(super) fn all(&self, other: Side, mut take: impl FnMut(Candidate)) {
        for (number, station) in self.stations.iter().enumerate() {
            if other.part(station).is_none() {
                continue;
            }
            let apart = self.station.at.distance(station.at);
            let heights = [self.station, station].map(|station| station.altitude - self.lowest);
            if apart > interference::horizon(heights[0], heights[1]) {
                continue;
            }
            let (from, to) = match self.side {
                Side::Sends => (self.station, station),
                Side::Listens => (station, self.station),
            };
            let (Some(sends), Some(listens)) = (&from.sends, &to.listens) else { continue };
            if let Some(filter) = filtered(sends, listens) {
                take(Candidate { number, filter });
            }
        }
    }

    fn filter(&self, group: &OnChannel) -> Option<Decibels> {
        // Any of the group has its channel: the first stands for all.
        let first = &self.stations[group.tree.iter().next()?.number];
        let (from, to) = match self.side {
            Side::Sends => (self.station, first),
            Side::Listens => (first, self.station),
        };
        filtered(from.sends.as_ref()?, to.listens.as_ref()?)
    }
}

/// Where an antenna looks, one long.
fn axis(station: &Station<'_>) -> [f64; 3] {
    let line = between(station.at.as_array(), station.aimed_at.as_array());
    let length = dot(line, line).sqrt();
    // One that is aimed at itself looks nowhere: every angle is then taken for the axis.
    if length > 0.0 { line.map(|part| part / length) } else { [f64::NAN; 3] }
}

fn between(from: [f64; 3], to: [f64; 3]) -> [f64; 3] {
    [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
}

fn dot(one: [f64; 3], other: [f64; 3]) -> f64 {
    one[0] * other[0] + one[1] * other[1] + one[2] * other[2]
}
