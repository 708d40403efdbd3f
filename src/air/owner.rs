//! Whose antenna it is, and all that is written of it.

use std::fmt;

use crate::network::{Document, Part, ResolvedHop};
use crate::place::DocumentId;
use crate::spec::{Antenna, End, EndName, Feeder, Half, Hop, Neighbour, Network, Radio, Site};

/// Whose antenna it is, by its document.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Named {
    /// An end of a hop of the network.
    Hop(DocumentId, EndName),
    /// A neighbour's.
    Neighbour(DocumentId),
}

impl Named {
    /// The document it is described in.
    #[must_use]
    pub const fn document(self) -> DocumentId {
        match self {
            Self::Hop(document, _) | Self::Neighbour(document) => document,
        }
    }
}

/// Whose antenna it is, with all that is written of it.
#[derive(Debug, Clone, Copy)]
pub enum Owner<'n> {
    /// An end of a hop of the network.
    Hop(Own<'n>),
    /// A neighbour's.
    Neighbour(&'n Document<Neighbour>),
}

/// An end of a hop of the network.
#[derive(Debug, Clone, Copy)]
pub struct Own<'n> {
    /// The network it belongs to.
    pub network: &'n Document<Network>,
    /// Its hop.
    pub hop: &'n Document<Hop>,
    /// Which end it is.
    pub name: EndName,
    /// What the hop says of it.
    pub end: Part<'n, End>,
    /// What the hop says of its partner.
    pub far_end: Part<'n, End>,
    /// Its site.
    pub site: &'n Document<Site>,
    /// That of its partner.
    pub far_site: &'n Document<Site>,
    /// Its radio.
    pub radio: &'n Document<Radio>,
    /// Its half of the band.
    pub half: Part<'n, Half>,
    /// Its antenna.
    pub antenna: &'n Document<Antenna>,
    /// What leads to it, if anything does.
    pub feeder: Option<&'n Document<Feeder>>,
}

impl<'n> Own<'n> {
    /// An end of a hop, broken or not.
    #[must_use]
    pub fn of(resolved: &ResolvedHop<'n>, name: EndName) -> Self {
        let (own, far) = (&resolved.ends[name], &resolved.ends[name.far()]);
        Self {
            network: resolved.network,
            hop: resolved.hop,
            name,
            end: own.end,
            far_end: far.end,
            site: own.site,
            far_site: far.site,
            radio: own.radio,
            half: own.half,
            antenna: own.antenna,
            feeder: own.feeder,
        }
    }
}

/// As a message calls it.
impl fmt::Display for Owner<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Hop(own) => write!(f, "`{}` end {}", own.hop.id, own.name),
            Self::Neighbour(neighbour) => write!(f, "neighbour `{}`", neighbour.id),
        }
    }
}
