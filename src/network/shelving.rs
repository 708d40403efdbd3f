//! Sorting documents into the library of their network, and what can be wrong between documents.

use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::elsewhere::{Elsewhere, Origin, no_standard};
use super::inherits::Inherits;
use super::library::{Library, Shelved};
use super::shelf::{Document, Slot};
use super::typing::{AnySpec, Entry, TypedFile};
use crate::finding::faults::{DANGLING, DUPLICATE_ID, NO_NETWORK, TWO_NETWORKS};
use crate::finding::{Finding, Spot};
use crate::place::{DocumentId, Place};
use crate::shape::Mention;
use crate::spec::{
    Antenna, Arrester, Bracket, Cable, Feeder, Fibre, Hop, Id, Kind, Neighbour, Network, Radio, Record, Service, Site,
    Supply, Template, Waiver,
};
use crate::text::few::few;
use crate::text::nearest::did_you_mean;

/// The most folders without a network that are named.
const MOST_HOMELESS: usize = 200;

/// Sorts documents into the library of their network.
pub(super) struct Shelving {
    /// In order of folder.
    pub(super) libraries: Vec<Library>,
    taken: HashMap<(usize, Kind, Id), DocumentId>,
    /// Documents that say they count in place of one in a library, by what they are, and whether there is one.
    replacing: HashMap<(usize, Kind, Id), (DocumentId, bool)>,
    /// References of documents that could not be typed, with the library they look into.
    mentions: Vec<(usize, Mention)>,
    /// Folders without a network that have been reported.
    homeless: Vec<PathBuf>,
    pub(super) findings: Vec<Finding>,
}

impl Shelving {
    pub(super) fn new(folders: &[PathBuf], typed: &[TypedFile]) -> Self {
        let mut roots: Vec<&PathBuf> = folders
            .iter()
            .zip(typed)
            .filter(|(_, file)| file.entries.iter().any(|entry| entry.kind == Kind::Network))
            .map(|(folder, _)| folder)
            .collect();
        roots.sort();
        roots.dedup();
        let of = |folder: &PathBuf| Library { folder: folder.clone(), ..Library::default() };
        let libraries = roots.into_iter().map(of).collect();
        Self {
            libraries,
            taken: HashMap::new(),
            replacing: HashMap::new(),
            mentions: Vec::new(),
            homeless: Vec::new(),
            findings: Vec::new(),
        }
    }

    /// The network in whose folder a folder lies.
    pub(super) fn around(&self, folder: &Path) -> Option<usize> {
        // The deepest folder around it; the folders are few steps and looked up, for there may be many networks.
        let find = |up: &Path| self.libraries.binary_search_by(|library| library.folder.as_path().cmp(up)).ok();
        folder.ancestors().find_map(find)
    }

    pub(super) fn put(&mut self, folder: &Path, mut entry: Entry) {
        let Some(number) = self.around(folder) else {
            self.homeless(folder, &entry);
            return;
        };
        self.mentions.extend(std::mem::take(&mut entry.mentions).into_iter().map(|mention| (number, mention)));
        let key = (number, entry.kind, entry.id.clone());
        if let Some(first) = self.taken.get(&key) {
            self.findings.push(duplicate_id(&entry, *first));
            return;
        }
        if entry.replaces {
            self.replacing.insert(key.clone(), (entry.document, false));
        }
        self.taken.insert(key, entry.document);
        let library = &mut self.libraries[number];
        library.holes.add(entry.document, entry.kind, &entry.id, std::mem::take(&mut entry.holes));
        if entry.kind == Kind::Network && !library.networks.index.is_empty() {
            self.findings.push(second_network(&entry, library));
            return;
        }
        shelve(library, entry);
    }

    /// Puts on the shelf of a network a document of a library, unless one of its own counts in place of it.
    pub(super) fn put_shared(&mut self, number: usize, mut entry: Entry, origin: Origin) {
        let key = (number, entry.kind, entry.id.clone());
        if let Some((_, found)) = self.replacing.get_mut(&key) {
            *found = true;
            return;
        }
        let library = &mut self.libraries[number];
        match self.taken.get(&key) {
            Some(first) if library.elsewhere.contains_key(first) => {
                self.findings.push(duplicate_id(&entry, *first));
            }
            Some(own) => self.findings.push(own_and_shared(&entry, *own, &origin)),
            None => {
                self.taken.insert(key, entry.document);
                self.mentions.extend(std::mem::take(&mut entry.mentions).into_iter().map(|mention| (number, mention)));
                library.holes.add(entry.document, entry.kind, &entry.id, std::mem::take(&mut entry.holes));
                self.put_from(number, entry, origin);
            }
        }
    }

    /// Says of documents that they replace nothing, once all libraries are read.
    pub(super) fn replace_nothing(&mut self) {
        let mut idle: Vec<_> = self.replacing.drain().filter(|(_, (_, found))| !found).collect();
        idle.sort_by_key(|(_, (document, _))| *document);
        for ((_, kind, id), (document, _)) in idle {
            let place = Place::document(document).below(&"replaces", &[]);
            let message = format!("no library of this network has a {kind} `{id}` that this one could replace");
            let mut finding = Finding::new(&DANGLING, place, message, "replaces nothing");
            finding.help("take `replaces` out, or give it the id of the document it stands in for");
            self.findings.push(finding);
        }
    }

    /// Puts on the shelf of a network what is not its own.
    pub(super) fn put_from(&mut self, number: usize, entry: Entry, origin: Origin) {
        let library = &mut self.libraries[number];
        let (kind, id) = (entry.kind, entry.id.clone());
        library.elsewhere.insert(entry.document, Elsewhere { kind, id, origin });
        shelve(library, entry);
    }

    /// Reports the dangling references of documents that have other faults too: all problems come out of one run.
    pub(super) fn follow_mentions(&mut self) {
        for (number, mention) in std::mem::take(&mut self.mentions) {
            let library = &self.libraries[number];
            let id = Id(mention.id);
            let Some(known) = library.lacks(mention.kind, &id) else { continue };
            let spot = Spot::Bytes(mention.file, mention.span);
            if let Some((message, help)) = no_standard(mention.kind, &id) {
                let mut finding = Finding::new(&DANGLING, spot, message, "unresolved reference");
                finding.help(help);
                self.findings.push(finding);
                continue;
            }
            let message = format!("the network has no {} `{id}`", mention.kind);
            let mut finding = Finding::new(&DANGLING, spot, message, "unresolved reference");
            finding.help(match known.nearest(&id) {
                Some(guess) => did_you_mean(guess),
                None => format!("there are: {}", few(known.words())),
            });
            self.findings.push(finding);
        }
    }

    /// Says once for a folder, its neighbours and what lies below them that they have no network.
    fn homeless(&mut self, folder: &Path, entry: &Entry) {
        let near =
            |other: &PathBuf| folder.starts_with(other) || folder.parent().is_some_and(|up| other.starts_with(up));
        if self.homeless.len() > MOST_HOMELESS || self.homeless.iter().any(near) {
            return;
        }
        self.homeless.push(folder.to_path_buf());
        let place = Place::document(entry.document).below(&"kind", &[]);
        let message = match self.homeless.len() {
            0..=MOST_HOMELESS => "no network document is found in this folder or above it",
            _ => "no network document is found in this folder or above it, nor for others that are not named",
        };
        let mut finding =
            Finding::new(&NO_NETWORK, place, message, format!("this {} belongs to no network", entry.kind));
        finding.help("add a file with `kind: network`, or check the folder that holds one");
        self.findings.push(finding);
    }
}

fn duplicate_id(entry: &Entry, first: DocumentId) -> Finding {
    let id_of = |document| Place::document(document).below(&"id", &[]);
    let message = format!("two documents are the {} `{}`", entry.kind, entry.id);
    let mut finding = Finding::new(&DUPLICATE_ID, id_of(entry.document), message, "again here");
    finding.because(id_of(first), "first here").help("give one of them another id");
    finding
}

fn own_and_shared(shared: &Entry, own: DocumentId, origin: &Origin) -> Finding {
    let id_of = |document| Place::document(document).below(&"id", &[]);
    let from = match origin {
        Origin::Shared(name) => format!("the library `{name}`"),
        Origin::Standard => "the program".to_owned(),
    };
    let message = format!("the {} `{}` is in this network and in {from}", shared.kind, shared.id);
    let mut finding = Finding::new(&DUPLICATE_ID, id_of(own), message, "which of them counts?");
    finding.because(id_of(shared.document), "the other one");
    finding.help("write `replaces: true` here if this one is to count, or take it out");
    finding
}

fn second_network(entry: &Entry, library: &Library) -> Finding {
    let id_of = |document| Place::document(document).below(&"id", &[]);
    let message = format!("`{}` is a second network in the same folder", entry.id);
    let mut finding = Finding::new(&TWO_NETWORKS, id_of(entry.document), message, "the second one");
    let first = library.networks.index.values().next().map(|slot| match slot {
        Slot::Typed(number) => library.networks.documents[*number].at,
        Slot::Broken(document) => *document,
    });
    if let Some(first) = first {
        finding.because(id_of(first), "the first one");
    }
    finding.help("give each network a folder of its own");
    finding
}

fn shelve(library: &mut Library, entry: Entry) {
    fn put<T: Shelved>(library: &mut Library, (at, inherits): (DocumentId, Option<Arc<Inherits>>), spec: Box<T>) {
        let holes = library.holes.of(at);
        let shelf = T::shelf_mut(library);
        shelf.index.insert(spec.id().clone(), Slot::Typed(shelf.documents.len()));
        shelf.documents.push(Document { at, spec, holes, inherits });
    }
    fn put_broken<T: Shelved>(library: &mut Library, document: DocumentId, id: Id) {
        T::shelf_mut(library).index.insert(id, Slot::Broken(document));
    }
    let Entry { document, kind, id, spec, inherits, .. } = entry;
    let at = (document, inherits);
    match spec {
        Some(AnySpec::Network(spec)) => put(library, at, spec),
        Some(AnySpec::Site(spec)) => put(library, at, spec),
        Some(AnySpec::Hop(spec)) => put(library, at, spec),
        Some(AnySpec::Radio(spec)) => put(library, at, spec),
        Some(AnySpec::Antenna(spec)) => put(library, at, spec),
        Some(AnySpec::Bracket(spec)) => put(library, at, spec),
        Some(AnySpec::Cable(spec)) => put(library, at, spec),
        Some(AnySpec::Fibre(spec)) => put(library, at, spec),
        Some(AnySpec::Supply(spec)) => put(library, at, spec),
        Some(AnySpec::Arrester(spec)) => put(library, at, spec),
        Some(AnySpec::Waiver(spec)) => put(library, at, spec),
        Some(AnySpec::Record(spec)) => put(library, at, spec),
        Some(AnySpec::Neighbour(spec)) => put(library, at, spec),
        Some(AnySpec::Service(spec)) => put(library, at, spec),
        Some(AnySpec::Template(spec)) => put(library, at, spec),
        Some(AnySpec::Feeder(spec)) => put(library, at, spec),
        None => match kind {
            Kind::Network => put_broken::<Network>(library, document, id),
            Kind::Site => put_broken::<Site>(library, document, id),
            Kind::Hop => put_broken::<Hop>(library, document, id),
            Kind::Radio => put_broken::<Radio>(library, document, id),
            Kind::Antenna => put_broken::<Antenna>(library, document, id),
            Kind::Bracket => put_broken::<Bracket>(library, document, id),
            Kind::Cable => put_broken::<Cable>(library, document, id),
            Kind::Fibre => put_broken::<Fibre>(library, document, id),
            Kind::Supply => put_broken::<Supply>(library, document, id),
            Kind::Arrester => put_broken::<Arrester>(library, document, id),
            Kind::Waiver => put_broken::<Waiver>(library, document, id),
            Kind::Record => put_broken::<Record>(library, document, id),
            Kind::Neighbour => put_broken::<Neighbour>(library, document, id),
            Kind::Service => put_broken::<Service>(library, document, id),
            Kind::Template => put_broken::<Template>(library, document, id),
            Kind::Feeder => put_broken::<Feeder>(library, document, id),
        },
    }
}
