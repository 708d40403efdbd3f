//! What every receiver hears from every other sender.
//!
//! [`Air::of`] gathers the antennas of all hops of a network, and those of neighbours, into an index by channel and place.
//! [`Air::heard`] then says of one receiver what reaches it from all senders whose spectrum overlaps its own, each by the sum
//!
//! ```text
//! I = P_t − L_t + G_t(φ_t) + G_r(φ_r) − L_bf − A_g − L_r − D_pol − NFD
//! ```
//!
//! No matrix of all pairs is held: a receiver is asked for when the sheet of its hop is computed. Paths are taken as clear up to
//! the radio horizon, in clear air: no ground, house or tree stands between, no rain falls, nothing is ducted. Antennas are
//! taken as aimed exactly at their partners.

mod aerial;
mod choices;
mod coupling;
mod feeder;
mod hearing;
mod limits;
mod near;
mod owner;
mod station;
mod trial;

pub use aerial::Aerial;
pub use coupling::Coupling;
pub use feeder::feeder_loss;
pub use hearing::{Disturbed, Heard, HeardFrom};
pub use limits::{FLOOR, SAME_SITE};
pub use owner::{Named, Own, Owner};
pub use station::{Listens, QUIETEST, Sends, Station};
pub use trial::Change;

use std::collections::HashMap;

use crate::network::{Document, ResolvedHop};
use crate::place::DocumentId;
use crate::spec::{EndName, Neighbour};
use crate::units::Metres;

use near::{OnChannel, Side};

/// All antennas of a network, and those of its neighbours.
#[derive(Debug, Default)]
pub struct Air<'n> {
    stations: Vec<Station<'n>>,
    /// Where a document stands in that list: a neighbour, or end `a` of a hop with its end `b` right behind.
    numbers: HashMap<DocumentId, usize>,
    /// How many of them are neighbours: they come last.
    neighbours: usize,
    /// Those at each site of the network.
    at_site: HashMap<DocumentId, Vec<usize>>,
    senders: Vec<OnChannel>,
    listeners: Vec<OnChannel>,
    /// Ground that no antenna stands on lower: heights for the horizon count from there.
    lowest: Metres,
}

impl<'n> Air<'n> {
    /// That of the hops of a network and of its neighbours. What is broken is left out; its own finding says that it is.
    #[must_use]
    pub fn of(hops: &[ResolvedHop<'n>], neighbours: &'n [Document<Neighbour>]) -> Self {
        let mut stations = Vec::with_capacity(2 * hops.len() + neighbours.len());
        let mut numbers = HashMap::with_capacity(hops.len());
        let mut models = station::Models::default();
        for hop in hops {
            if let Some(both) = station::of_hop(hop, &mut models) {
                numbers.insert(hop.hop.at, stations.len());
                stations.extend(both);
            }
        }
        let of_hops = stations.len();
        for station in neighbours.iter().filter_map(station::of_neighbour) {
            numbers.insert(station.named().document(), stations.len());
            stations.push(station);
        }
        let neighbours = stations.len() - of_hops;
        let mut at_site: HashMap<DocumentId, Vec<usize>> = HashMap::new();
        for (number, station) in stations.iter().enumerate() {
            station.site().into_iter().for_each(|site| at_site.entry(site).or_default().push(number));
        }
        let lowest = stations.iter().map(|station| station.ground.0).fold(f64::INFINITY, f64::min);
        let lowest = Metres(if lowest.is_finite() { lowest } else { 0.0 });
        let (senders, listeners) = rayon::join(
            || near::by_channel(&stations, lowest, Side::Sends),
            || near::by_channel(&stations, lowest, Side::Listens),
        );
        Self { stations, numbers, neighbours, at_site, senders, listeners, lowest }
    }

    /// An end of a hop, unless something of it is broken.
    #[must_use]
    pub fn station(&self, hop: DocumentId, end: EndName) -> Option<&Station<'n>> {
        self.stations.get(self.number(hop, end)?)
    }

    /// All of them, hops first.
    #[must_use]
    pub fn stations(&self) -> &[Station<'n>] {
        &self.stations
    }

    /// The lowest ground.
    #[must_use]
    pub const fn lowest(&self) -> Metres {
        self.lowest
    }

    /// The number of an end of a hop among all.
    #[must_use]
    pub fn number(&self, hop: DocumentId, end: EndName) -> Option<usize> {
        self.number_of(Named::Hop(hop, end))
    }

    fn number_of(&self, named: Named) -> Option<usize> {
        let first = *self.numbers.get(&named.document())?;
        Some(match named {
            Named::Hop(_, EndName::B) => first + 1,
            Named::Hop(_, EndName::A) | Named::Neighbour(_) => first,
        })
    }

    /// What an end of a hop hears from all others. None if something of it is broken.
    #[must_use]
    pub fn heard(&self, hop: DocumentId, end: EndName) -> Option<Heard> {
        Some(self.heard_by(self.station(hop, end)?))
    }
}
