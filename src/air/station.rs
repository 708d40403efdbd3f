//! One antenna with what it sends and what it listens to.

use std::collections::HashMap;
use std::sync::Arc;

use super::aerial::{Aerial, Bound};
use super::feeder::feeder_loss as for_length;
use super::limits::SAME_SITE;
use super::owner::{Named, Own, Owner};
use crate::at;
use crate::network::{Document, Holed, ResolvedEnd, ResolvedHop};
use crate::physics::filter::Mask;
use crate::physics::geodesy::Position;
use crate::physics::off_axis::EarthCentred;
use crate::physics::receiver;
use crate::place::{DocumentId, Place};
use crate::spec::{Antenna, Both, EndName, MaskPoint, Neighbour, Polarisation, Radio, Way};
use crate::units::{Dbm, Decibels, Degrees, Gigahertz, Megahertz, Metres};

/// Noise figure of a receiver of which nobody states one: no receiver at these frequencies is quieter, so that nothing is
/// made too little of (common practice, no source).
pub const QUIETEST: Decibels = Decibels(2.0);

/// One antenna.
#[derive(Debug, Clone)]
pub struct Station<'n> {
    /// Whose it is.
    pub owner: Owner<'n>,
    /// Where it is.
    pub at: EarthCentred,
    /// Its partner, or a point straight ahead.
    pub aimed_at: EarthCentred,
    /// Ground below it above the sea.
    pub ground: Metres,
    /// How high it is above the sea.
    pub altitude: Metres,
    /// Its polarisation.
    pub polarisation: Polarisation,
    /// What it sends.
    pub sends: Option<Sends>,
    /// What it listens to.
    pub listens: Option<Listens>,
}

impl Station<'_> {
    /// Whose it is, by its document.
    #[must_use]
    pub const fn named(&self) -> Named {
        match self.owner {
            Owner::Hop(own) => Named::Hop(own.hop.at, own.name),
            Owner::Neighbour(neighbour) => Named::Neighbour(neighbour.at),
        }
    }

    /// The site it stands at, where it is of the network.
    #[must_use]
    pub const fn site(&self) -> Option<DocumentId> {
        match self.owner {
            Owner::Hop(own) => Some(own.site.at),
            Owner::Neighbour(_) => None,
        }
    }

    /// Whether it stands where the partner of another does.
    #[must_use]
    pub fn is_beside_partner_of(&self, other: &Self) -> bool {
        let far = match other.owner {
            Owner::Hop(own) => own.far_site.at,
            Owner::Neighbour(_) => return false,
        };
        self.site() == Some(far) || self.at.distance(other.aimed_at) < SAME_SITE
    }

    /// Whether what it sends lies in the band that the half of another listens in. Radios that take turns on one frequency
    /// listen in the band they send in, and are told apart by their channels.
    #[must_use]
    pub fn sends_into_half_of(&self, other: &Self) -> bool {
        let (Some(sends), Owner::Hop(own)) = (&self.sends, &other.owner) else { return false };
        let channel = &own.hop.channel;
        let (window, takes_turns) = (&own.half.receive, channel.a_to_b.value == channel.b_to_a.value);
        let half_width = sends.bandwidth.0 / 2000.0;
        let (low, high) = (sends.frequency.0 - half_width, sends.frequency.0 + half_width);
        !takes_turns && low < window.max.value.0 && window.min.value.0 < high
    }

    /// Whether two antennas stand at one site.
    #[must_use]
    pub fn is_beside(&self, other: &Self) -> bool {
        (self.site().is_some() && self.site() == other.site()) || self.at.distance(other.at) < SAME_SITE
    }
}

/// What an antenna sends.
#[derive(Debug, Clone)]
pub struct Sends {
    /// Its antenna at that frequency.
    pub aerial: Arc<Aerial>,
    /// The most it gains further and further off the axis.
    pub(super) bound: Arc<Bound>,
    /// Centre frequency.
    pub frequency: Gigahertz,
    /// Occupied bandwidth.
    pub bandwidth: Megahertz,
    /// Its spectrum.
    pub mask: Arc<Mask>,
    /// Power at the antenna, feeders taken off; of each carrier where there are two.
    pub power: Dbm,
}

/// What an antenna listens to.
#[derive(Debug, Clone)]
pub struct Listens {
    /// Its antenna at that frequency.
    pub aerial: Arc<Aerial>,
    /// The most it gains further and further off the axis.
    pub(super) bound: Arc<Bound>,
    /// Centre frequency.
    pub frequency: Gigahertz,
    /// Occupied bandwidth.
    pub bandwidth: Megahertz,
    /// What its receiver lets through.
    pub mask: Arc<Mask>,
    /// What is lost between antenna and receiver.
    pub loss: Decibels,
    /// Noise of the receiver at its input.
    pub noise: Dbm,
}

/// What many hops have in common, made once.
#[derive(Debug, Default)]
pub(super) struct Models {
    aerials: HashMap<(DocumentId, u64), (Arc<Aerial>, Arc<Bound>)>,
    masks: HashMap<Option<(DocumentId, bool)>, Arc<Mask>>,
}

impl Models {
    fn aerial(&mut self, model: &Document<Antenna>, frequency: Gigahertz) -> (Arc<Aerial>, Arc<Bound>) {
        let known = self.aerials.entry((model.at, frequency.0.to_bits()));
        let (aerial, bound) = known.or_insert_with(|| {
            let aerial = Arc::new(Aerial::of(model, frequency));
            let bound = Bound::of(&aerial);
            (aerial, bound)
        });
        (Arc::clone(aerial), Arc::clone(bound))
    }

    fn masks(&mut self, radio: &Document<Radio>) -> [Arc<Mask>; 2] {
        [(true, &radio.transmit_mask), (false, &radio.receive_mask)].map(|(sent, points)| {
            // All that have none have the same one.
            let known = (!points.is_empty()).then_some((radio.at, sent));
            Arc::clone(self.masks.entry(known).or_insert_with(|| Arc::new(mask(points))))
        })
    }
}

/// The two ends of a hop, unless something that counts here is broken.
pub(super) fn of_hop<'n>(hop: &ResolvedHop<'n>, models: &mut Models) -> Option<[Station<'n>; 2]> {
    is_sound(hop).then(|| {
        let spots = hop.ends.each_ref().map(spot);
        let Both { a, b } = Both::ends(|name| of_end(hop, name, &spots, models));
        [a, b]
    })
}

/// Whether nothing that counts here is broken: what is, says so itself.
fn is_sound(resolved: &ResolvedHop<'_>) -> bool {
    let hop = resolved.hop;
    let channel =
        [at!(hop.channel.a_to_b), at!(hop.channel.b_to_a), at!(hop.channel.bandwidth), at!(hop.channel.polarisation)];
    whole(hop, &channel) && resolved.ends.iter().all(is_sound_end)
}

fn is_sound_end(own: &ResolvedEnd<'_>) -> bool {
    let (end, site, radio, antenna) = (own.end, own.site, own.radio, own.antenna);
    let dish = [
        at!(antenna.gain),
        at!(antenna.gain_at),
        at!(antenna.gain_by_frequency),
        at!(antenna.diameter),
        at!(antenna.cross_polar),
        at!(antenna.pattern),
    ];
    whole(&end, &[at!(end.height), at!(end.transmit_power), at!(end.losses), at!(end.feeder)])
        && own.feeder.is_none_or(|feeder| {
            whole(feeder, &[at!(feeder.loss_by_frequency), at!(feeder.construction), at!(feeder.inside)])
        })
        && whole(site, &[at!(site.position), at!(site.ground_height)])
        && whole(
            radio,
            &[at!(radio.noise_figure), at!(radio.transmit_mask), at!(radio.receive_mask), at!(radio.halves)],
        )
        && whole(antenna, &dish)
}

/// Whether none of these places of a document is broken.
fn whole(document: &impl Holed, places: &[Place]) -> bool {
    document.holes().is_none_or(|holes| places.iter().all(|place| holes.at(place).is_none()))
}

fn altitude(end: &ResolvedEnd<'_>) -> Metres {
    end.site.ground_height.value + end.end.height.value
}

fn spot(end: &ResolvedEnd<'_>) -> EarthCentred {
    let position = &end.site.position;
    let position = Position { latitude: position.latitude.value, longitude: position.longitude.value };
    EarthCentred::of(position, altitude(end))
}

fn of_end<'n>(hop: &ResolvedHop<'n>, name: EndName, spots: &Both<EarthCentred>, models: &mut Models) -> Station<'n> {
    let (own, channel) = (&hop.ends[name], &hop.hop.channel);
    let (radio, bandwidth) = (own.radio, channel.bandwidth.value);
    let losses = own.end.losses.iter().fold(Decibels(0.0), |sum, loss| sum + loss.loss.value);
    // Where the loss of a feeder is not known, more is heard and sent than is: a rule asks for it.
    let loss = |way: Way| losses + feeder_loss(own, channel.frequency(way).value).unwrap_or_default();
    let mut aerial = |way: Way| models.aerial(own.antenna, channel.frequency(way).value);
    let ((sent, sent_bound), (heard, heard_bound)) = (aerial(name.outgoing()), aerial(name.incoming()));
    let [sent_mask, heard_mask] = models.masks(radio);
    let figure = radio.noise_figure.as_ref().map_or(QUIETEST, |given| given.value);
    Station {
        owner: Owner::Hop(Own::of(hop, name)),
        at: spots[name],
        aimed_at: spots[name.far()],
        ground: own.site.ground_height.value,
        altitude: altitude(own),
        polarisation: channel.polarisation,
        sends: Some(Sends {
            frequency: sent.frequency,
            aerial: sent,
            bound: sent_bound,
            bandwidth,
            mask: sent_mask,
            power: own.end.transmit_power.value - loss(name.outgoing()),
        }),
        listens: Some(Listens {
            frequency: heard.frequency,
            aerial: heard,
            bound: heard_bound,
            bandwidth,
            mask: heard_mask,
            loss: loss(name.incoming()),
            noise: receiver::noise(bandwidth, figure),
        }),
    }
}

/// What the feeder of an end takes at a frequency.
fn feeder_loss(own: &ResolvedEnd<'_>, frequency: Gigahertz) -> Option<Decibels> {
    let used = own.end.spec.feeder.as_ref()?;
    Some(for_length(own.feeder?, frequency)? * used.length.value)
}

/// How wide a step of a mask is taken to be, in bandwidths of the channel.
const STEP: f64 = 1e-9;

/// A mask as it is written; the channel and nothing else where nobody states one.
fn mask(points: &[MaskPoint]) -> Mask {
    let mut list: Vec<(f64, Decibels)> =
        points.iter().map(|point| (point.offset.0.abs(), Decibels(0.0) - point.below.value)).collect();
    list.sort_by(|one, other| one.0.total_cmp(&other.0));
    if list.first().is_some_and(|(offset, _)| *offset > 0.0) {
        list.insert(0, (0.0, Decibels(0.0)));
    }
    // Two levels at one offset are a step.
    for next in 1..list.len() {
        list[next].0 = list[next].0.max(list[next - 1].0 + STEP);
    }
    Mask::new(&list).unwrap_or_else(Mask::rectangle)
}

/// A neighbour, unless something of it is broken.
pub(super) fn of_neighbour(neighbour: &Document<Neighbour>) -> Option<Station<'_>> {
    if neighbour.holes().is_some() {
        return None;
    }
    let position = &neighbour.position;
    let position = Position { latitude: position.latitude.value, longitude: position.longitude.value };
    let ground = neighbour.ground_height.value;
    let altitude = ground + neighbour.height.value;
    let elevation = neighbour.elevation.as_ref().map_or(Degrees(0.0), |given| given.value);
    let aerial = |frequency: Gigahertz| {
        let diameter = neighbour.diameter.as_ref().map(|given| given.value);
        let cross_polar = neighbour.cross_polar.as_ref().map(|given| given.value);
        let pattern = &neighbour.pattern;
        let aerial = Arc::new(Aerial::new(frequency, neighbour.gain.value, diameter, cross_polar, pattern));
        (Bound::of(&aerial), aerial)
    };
    let sends = neighbour.sends.as_ref().map(|sends| {
        let (bound, aerial) = aerial(sends.frequency.value);
        Sends {
            power: sends.eirp.value - neighbour.gain.value,
            frequency: sends.frequency.value,
            bandwidth: sends.bandwidth.value,
            mask: Arc::new(Mask::rectangle()),
            aerial,
            bound,
        }
    });
    let listens = neighbour.listens.as_ref().map(|listens| {
        let (bound, aerial) = aerial(listens.frequency.value);
        let figure = listens.noise_figure.as_ref().map_or(QUIETEST, |given| given.value);
        Listens {
            frequency: listens.frequency.value,
            bandwidth: listens.bandwidth.value,
            mask: Arc::new(Mask::rectangle()),
            loss: Decibels(0.0),
            noise: receiver::noise(listens.bandwidth.value, figure),
            aerial,
            bound,
        }
    });
    Some(Station {
        owner: Owner::Neighbour(neighbour),
        at: EarthCentred::of(position, altitude),
        aimed_at: EarthCentred::ahead(position, altitude, neighbour.bearing.value, elevation),
        ground,
        altitude,
        polarisation: neighbour.polarisation,
        sends,
        listens,
    })
}

/// A station of a hop on other channels, by way.
pub(super) fn retuned<'n>(station: &Station<'n>, channels: Both<Gigahertz>) -> Station<'n> {
    let mut station = station.clone();
    let Owner::Hop(own) = station.owner else { return station };
    let aerial = |frequency| {
        let aerial = Arc::new(Aerial::of(own.antenna, frequency));
        (Bound::of(&aerial), aerial)
    };
    if let Some(sends) = &mut station.sends {
        sends.frequency = channels[own.name.outgoing()];
        (sends.bound, sends.aerial) = aerial(sends.frequency);
    }
    if let Some(listens) = &mut station.listens {
        listens.frequency = channels[own.name.incoming()];
        (listens.bound, listens.aerial) = aerial(listens.frequency);
    }
    station
}
