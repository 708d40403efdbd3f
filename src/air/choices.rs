//! Where else a hop could be in the spectrum.

use super::Air;
use super::owner::{Own, Owner};
use crate::physics::codes;
use crate::physics::raster::Raster;
use crate::place::DocumentId;
use crate::spec::{Both, EndName, LicenceCode, Way, Window};
use crate::units::{Gigahertz, Megahertz};

/// The most channels that are looked at for one hop.
const MOST: usize = 64;

impl Air<'_> {
    /// The pairs of channels a hop could use with the radios and antennas it has, all else as it is: those of the raster of the
    /// codes it falls under, else those in use in its network. Its own is among them. In order of frequency.
    #[must_use]
    pub fn channels(&self, hop: DocumentId) -> Vec<Both<Gigahertz>> {
        let owner = |end| self.station(hop, end).map(|station| station.owner);
        let (Some(Owner::Hop(a)), Some(Owner::Hop(b))) = (owner(EndName::A), owner(EndName::B)) else {
            return Vec::new();
        };
        let (ends, own) = (Both { a, b }, own_pair(&a));
        let mut pairs = self.known(&a, own);
        pairs.push(own);
        pairs.retain(|pair| fits(&ends, *pair));
        in_order(&mut pairs);
        pairs.truncate(MOST);
        pairs
    }

    /// The same whichever end sends on the higher channel, and whether or not radios and antennas can be set to them.
    #[must_use]
    pub fn pairs(&self, hop: DocumentId) -> Vec<Both<Gigahertz>> {
        let Some(Owner::Hop(a)) = self.station(hop, EndName::A).map(|station| station.owner) else { return Vec::new() };
        let own = own_pair(&a);
        let mut pairs = self.known(&a, own);
        pairs.push(own);
        let turned: Vec<Both<Gigahertz>> = pairs.iter().map(|pair| Both { a: pair.b, b: pair.a }).collect();
        pairs.extend(turned);
        in_order(&mut pairs);
        pairs
    }

    /// Pairs of the rasters that a channel falls under, else those in use.
    fn known(&self, a: &Own<'_>, own: Both<Gigahertz>) -> Vec<Both<Gigahertz>> {
        let pairs = of_rasters(a, own);
        if pairs.is_empty() { self.in_use(a.hop.channel.bandwidth.value, own.b < own.a) } else { pairs }
    }

    /// Pairs of channels of a width that hops use, the lower one or the higher one first.
    fn in_use(&self, width: Megahertz, higher_first: bool) -> Vec<Both<Gigahertz>> {
        let used = self.stations.iter().filter_map(|station| match &station.owner {
            Owner::Hop(Own { hop, name: EndName::A, .. }) if hop.channel.bandwidth.value == width => {
                let (one, other) = (hop.channel.a_to_b.value, hop.channel.b_to_a.value);
                let turned = (other < one) != higher_first;
                Some(if turned { Both { a: other, b: one } } else { Both { a: one, b: other } })
            }
            _ => None,
        });
        let mut used: Vec<Both<Gigahertz>> = used.collect();
        in_order(&mut used);
        used
    }

    /// Whether a hop is known here.
    #[must_use]
    pub fn knows(&self, hop: DocumentId) -> bool {
        self.numbers.contains_key(&hop)
    }
}

/// What the ends of a hop send on.
fn own_pair(a: &Own<'_>) -> Both<Gigahertz> {
    let channel = &a.hop.channel;
    Both { a: channel.a_to_b.value, b: channel.b_to_a.value }
}

/// By frequency, each once.
fn in_order(pairs: &mut Vec<Both<Gigahertz>>) {
    pairs.sort_by(|one, other| one.a.0.total_cmp(&other.a.0).then(one.b.0.total_cmp(&other.b.0)));
    pairs.dedup();
}

/// The pairs of the rasters that the channel of a hop falls under, in the halves it is in now.
fn of_rasters(Own { hop, network, .. }: &Own<'_>, own: Both<Gigahertz>) -> Vec<Both<Gigahertz>> {
    let width = hop.channel.bandwidth.value;
    let named = if hop.licence.codes.is_empty() { &network.codes.licence } else { &hop.licence.codes };
    let half = Gigahertz(width.0 / 2000.0);
    let raster = |code: &LicenceCode| -> Option<&'static Raster> {
        let code = codes::named(code.word())?;
        code.holds(own.a - half, own.a + half).then_some(code.raster?)
    };
    let rasters = named.iter().filter_map(raster);
    let pairs = rasters.flat_map(|raster| {
        let lower = (1..=raster.count(width)).filter_map(move |number| raster.centre(number, width));
        lower.map(move |lower| match raster.duplex {
            // Both take turns.
            None => Both { a: lower, b: lower },
            Some(duplex) if own.b < own.a => Both { a: lower + duplex, b: lower },
            Some(duplex) => Both { a: lower, b: lower + duplex },
        })
    });
    pairs.collect()
}

/// Whether radios and antennas of a hop can be set to a pair of channels.
fn fits(ends: &Both<Own<'_>>, pair: Both<Gigahertz>) -> bool {
    let half = ends.a.hop.channel.bandwidth.value.0 / 2000.0;
    let inside = |window: &Window<Gigahertz>, centre: Gigahertz| {
        window.min.value.0 <= centre.0 - half + 1e-9 && centre.0 + half - 1e-9 <= window.max.value.0
    };
    Way::BOTH.into_iter().all(|way| {
        let (sender, receiver) = (&ends[way.sender()], &ends[way.receiver()]);
        let centre = pair[way];
        inside(&sender.half.transmit, centre)
            && inside(&receiver.half.receive, centre)
            && inside(&sender.antenna.band, centre)
            && inside(&receiver.antenna.band, centre)
    })
}
