//! The documents of one network, by kind and id.

use super::elsewhere::{Elsewheres, SharedLibrary};
use super::holes::Holes;
use super::profile::ProfileFiles;
use super::shelf::{Look, Shelf};
use crate::spec::{
    Antenna, Arrester, Bracket, Cable, Feeder, Fibre, Hop, Id, Kind, Neighbour, Network, Radio, Record, Ref, Service,
    Site, Spec, Supply, Template, Waiver,
};
use crate::text::nearest::Vocabulary;

/// A kind that has a shelf.
pub trait Shelved: Spec {
    /// Its shelf in a library.
    fn shelf(library: &Library) -> &Shelf<Self>;
    /// The same, to add to.
    fn shelf_mut(library: &mut Library) -> &mut Shelf<Self>;
}

macro_rules! library {
    ($($(#[$doc:meta])* $shelf:ident: $type:ident;)+) => {
        /// All documents of one network.
        #[derive(Debug, Default)]
        pub struct Library {
            $($(#[$doc])* pub $shelf: Shelf<$type>,)+
            /// The folder of its network.
            pub folder: std::path::PathBuf,
            /// Its documents that are not the network's own.
            pub elsewhere: Elsewheres,
            /// The libraries it shares with other networks.
            pub shared: Vec<SharedLibrary>,
            /// What nothing may be concluded from.
            pub holes: Holes,
            /// Profiles that hops have in files of their own.
            pub profiles: ProfileFiles,
        }

        impl Library {
            /// The ids of a kind, if `id` is not among them.
            #[must_use]
            pub fn lacks(&self, kind: Kind, id: &Id) -> Option<&Vocabulary> {
                match kind {
                    $(Kind::$type => (!self.$shelf.index.contains_key(id)).then(|| self.$shelf.known()),)+
                }
            }
        }

        $(impl Shelved for $type {
            fn shelf(library: &Library) -> &Shelf<Self> {
                &library.$shelf
            }
            fn shelf_mut(library: &mut Library) -> &mut Shelf<Self> {
                &mut library.$shelf
            }
        })+
    };
}

library! {
    /// One, or none when it is missing or broken.
    networks: Network;
    /// Places.
    sites: Site;
    /// Hops.
    hops: Hop;
    /// Radio models.
    radios: Radio;
    /// Antenna models.
    antennas: Antenna;
    /// Bracket models.
    brackets: Bracket;
    /// Cable types.
    cables: Cable;
    /// Cables of optical fibres.
    fibres: Fibre;
    /// Supply models.
    supplies: Supply;
    /// Arrester models.
    arresters: Arrester;
    /// Accepted departures.
    waivers: Waiver;
    /// What came back from the roof.
    records: Record;
    /// Antennas of other owners.
    neighbours: Neighbour;
    /// What is carried from site to site.
    services: Service;
    /// What ends, runs and groundings are like.
    templates: Template;
    /// Coaxial cables and waveguides.
    feeders: Feeder;
}

impl Library {
    /// Looks a reference up.
    #[must_use]
    pub fn look<T: Shelved>(&self, reference: &Ref<T>) -> Look<'_, T> {
        T::shelf(self).look(reference)
    }
}
