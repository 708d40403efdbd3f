//! A hop of a network that is open: judged by itself, and known by what it is made of.

use super::one_network::OpenNetwork;
use crate::air::Air;
use crate::finding::Finding;
use crate::network::{Fellow, Library, ResolvedHop, mark};
use crate::place::DocumentId;
use crate::sheet::HopSheet;

/// A hop of a network that is open.
#[derive(Clone, Copy)]
pub struct OpenHop<'o> {
    pub(super) network: &'o OpenNetwork<'o>,
    /// The hop.
    pub hop: &'o ResolvedHop<'o>,
}

impl<'o> OpenHop<'o> {
    /// Those of a network, in order of file.
    pub(super) fn all(network: &'o OpenNetwork<'o>) -> impl Iterator<Item = Self> {
        network.hops.iter().map(move |hop| Self { network, hop })
    }
}

impl<'o> OpenHop<'o> {
    /// The documents of its network.
    #[must_use]
    pub const fn library(&self) -> &'o Library {
        self.network.library
    }

    /// Who hears whom in its network.
    #[must_use]
    pub const fn air(&self) -> &'o Air<'o> {
        self.network.hearing.air()
    }
}

impl OpenHop<'_> {
    /// Hands its sheet and what is found about it to `work`.
    pub fn judge<R>(&self, work: impl FnOnce(&HopSheet<'_>, &[Finding]) -> R) -> R {
        let (sheet, found) = self.network.hop(self.hop);
        work(&sheet, &found)
    }

    /// The documents it is made from and those that came back from it, in an order that is the same in another state.
    #[must_use]
    pub fn documents(&self) -> Vec<DocumentId> {
        let records = self.hop.records.iter().map(|record| record.at);
        mark::sources(self.hop).into_iter().chain(records).collect()
    }

    /// All ends at a site.
    pub fn at_site(&self, site: DocumentId) -> impl Iterator<Item = Fellow<'_>> {
        self.network.companions().at_site(site)
    }

    /// Whether a waiver is for it, be it one that holds or not.
    #[must_use]
    pub fn is_waived(&self) -> bool {
        self.network.library.waivers.documents.iter().any(|waiver| *waiver.target.hop.0 == *self.hop.hop.id.0)
    }

    /// Whether nothing it is made from has a stand-in for something broken.
    #[must_use]
    pub fn is_sound(&self) -> bool {
        let holes = &self.network.library.holes;
        let sound = holes.is_empty() || self.documents().iter().all(|document| holes.of(*document).is_none());
        sound && !matches!(self.hop.profile_file, Some(Err(_)))
    }

    /// Whether it hears, and puts into others, the same as a hop of another state: from the same senders, to the last bit.
    #[must_use]
    pub fn hears_the_same(&self, other: Self) -> bool {
        self.network.hearing.around(self.hop) == other.network.hearing.around(other.hop)
    }

    /// Whether the maps of rain and the tiles of ground heights give the same for it as for a hop of another state.
    #[must_use]
    pub fn has_the_same_beside(&self, other: Self) -> bool {
        self.network.maps.same_for([self.hop, other.hop], &other.network.maps)
            && self.network.terrains.same_for([self.hop, other.hop], &other.network.terrains)
    }
}
