//! Filling in what a hop does not write: from a template, from the defaults of its support, its site, its network.
//!
//! It is done in the tree, before a hop is typed. All that comes after sees a hop as if it were written out in full.

mod faults;
mod gather;
mod hop;
mod states;

use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use crate::shape;
use crate::source::{Document, Layer, Parsed};
use crate::spec::Kind;

pub(super) use faults::faults;
pub(super) use gather::gather;
pub(super) use hop::{TakenIn, of_hop};
pub(super) use states::of_radio;

/// The keys of a template and of defaults, each for what it fills.
const SECTIONS: [&str; 4] = ["end", "run", "fibre_run", "grounding"];

/// A document that hops take values from.
#[derive(Debug)]
pub(super) struct Giver {
    pub(super) kind: Kind,
    pub(super) id: Arc<str>,
    /// Its number in its file.
    number: u16,
    parsed: Arc<Parsed>,
}

impl Giver {
    fn tree(&self) -> &Document {
        &self.parsed.documents[usize::from(self.number)]
    }
}

/// What the hops of a network may take in.
#[derive(Debug, Default)]
pub(super) struct Givers {
    pub(super) list: Vec<Giver>,
    /// The same as the shape check needs them, by the same numbers.
    pub(super) texts: Vec<shape::Giver>,
    network: Option<usize>,
    templates: HashMap<String, usize>,
    sites: HashMap<String, usize>,
    /// Whether the network document, which seems to have defaults, cannot be read.
    unreadable: bool,
}

impl Givers {
    /// A giver as a whole.
    fn root(&self, number: usize) -> Layer<'_> {
        Layer::whole(number, self.list[number].tree())
    }

    /// Whether hops take anything in that name no template.
    fn has_defaults(&self) -> bool {
        self.network.is_some() || !self.sites.is_empty() || self.unreadable
    }
}

/// What hops may take in, by the folder of their network.
#[derive(Debug, Default)]
pub(super) struct AllGivers {
    networks: HashMap<PathBuf, Givers>,
    none: Givers,
}

impl AllGivers {
    /// What the hops in a folder may take in.
    pub(super) fn around(&self, folder: &Path) -> &Givers {
        folder.ancestors().find_map(|up| self.networks.get(up)).unwrap_or(&self.none)
    }

    /// Those of every network, in order of folder.
    pub(super) fn all(&self) -> Vec<&Givers> {
        let mut all: Vec<(&PathBuf, &Givers)> = self.networks.iter().collect();
        all.sort_by_key(|(folder, _)| *folder);
        all.into_iter().map(|(_, givers)| givers).collect()
    }
}

/// The text of the key of a mapping.
fn text_of<'g>(layer: &Layer<'g>, key: &str) -> Option<&'g str> {
    let below = layer.below(key)?;
    layer.tree.text(below.node)
}
