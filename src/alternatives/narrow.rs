//! The part of a network that has a say in one hop: what a trial reads. A network of a few dozen hops is read whole; of a
//! larger one the files of hops that are far away are left out. That only saves time: what is offered has been judged with the
//! whole network around it as well.

use std::collections::HashSet;
use std::path::PathBuf;
use std::sync::Arc;

use crate::air::{Air, Owner};
use crate::network::{Files, Home, Library, ResolvedHop, Scope};
use crate::place::{DocumentId, FileId};
use crate::spec::{EndName, Hop};
use crate::verdict::{OpenHop, Read};

/// Up to so many hops all are read.
const FEW: usize = 40;

/// The scope with nothing in it but the texts that have a say in a hop.
pub(super) fn around(read: &Read, own: &OpenHop<'_>) -> Scope {
    let files = read.files();
    let left_out = left_out(read.libraries(), own);
    let list = (0..).map(FileId).zip(&files.list);
    let kept = list.filter(|(number, file)| file.home != Home::Standard && !left_out.contains(number));
    let texts: Vec<(PathBuf, Arc<str>)> =
        kept.map(|(_, file)| (file.origin.clone(), Arc::from(file.text.as_str()))).collect();
    read.scope().clone().with_only(&texts)
}

/// Files that hold nothing but hops that have no say, and what came back from those.
fn left_out(libraries: &[Library], own: &OpenHop<'_>) -> HashSet<FileId> {
    let hops = || libraries.iter().flat_map(|library| &library.hops.documents);
    if hops().count() <= FEW {
        return HashSet::new();
    }
    let near = near(own);
    let far = |hop: DocumentId| !near.contains(&hop);
    let mut left: HashSet<FileId> = hops().map(|hop| hop.at).filter(|hop| far(*hop)).map(|hop| hop.file).collect();
    let kept: HashSet<&str> = hops().filter(|hop| !far(hop.at)).map(|hop| &*hop.id.0).collect();
    for library in libraries {
        for record in &library.records.documents {
            if !kept.contains(&*record.hop.0) {
                left.insert(record.at.file);
            }
        }
    }
    for library in libraries {
        needed(library, |hop| !far(hop), |hop| kept.contains(hop)).for_each(|file| {
            left.remove(&file);
        });
    }
    left
}

/// The files of a library that hold something else, or a hop that has a say, or a record of one.
fn needed<'l>(
    library: &'l Library,
    is_near: impl Fn(DocumentId) -> bool + 'l,
    is_kept: impl Fn(&str) -> bool + 'l,
) -> impl Iterator<Item = FileId> + 'l {
    fn files<T>(documents: &[crate::network::Document<T>]) -> impl Iterator<Item = FileId> {
        documents.iter().map(|document| document.at.file)
    }
    let places = files(&library.networks.documents)
        .chain(files(&library.sites.documents))
        .chain(files(&library.services.documents))
        .chain(files(&library.neighbours.documents))
        .chain(files(&library.waivers.documents));
    let equipment = files(&library.radios.documents)
        .chain(files(&library.antennas.documents))
        .chain(files(&library.brackets.documents))
        .chain(files(&library.cables.documents))
        .chain(files(&library.fibres.documents))
        .chain(files(&library.supplies.documents))
        .chain(files(&library.arresters.documents));
    let hops = library.hops.documents.iter().map(|hop| hop.at).filter(move |hop| is_near(*hop)).map(|hop| hop.file);
    let records = library.records.documents.iter().filter(move |record| is_kept(&record.hop.0));
    places.chain(equipment).chain(hops).chain(records.map(|record| record.at.file))
}

/// The hops that have a say in one: at its sites, over its cables, in a service with it, heard by it, and the nearest others.
fn near(own: &OpenHop<'_>) -> HashSet<DocumentId> {
    let (hop, air) = (own.hop, own.air());
    let mut near = HashSet::from([hop.hop.at]);
    for end in hop.ends.iter() {
        near.extend(own.at_site(end.site.at).map(|fellow| fellow.hop.hop.at));
        near.extend(end.runs.iter().filter_map(|run| run.ends_at).map(|far| far.hop.at));
    }
    near.extend(heard(air, hop));
    near.extend(in_services(own.library(), &hop.hop.id.0));
    near.extend(nearest(air, hop));
    near
}

fn owner(air: &Air<'_>, number: usize) -> Option<DocumentId> {
    match air.stations().get(number)?.owner {
        Owner::Hop(own) => Some(own.hop.at),
        Owner::Neighbour(_) => None,
    }
}

fn heard(air: &Air<'_>, hop: &ResolvedHop<'_>) -> Vec<DocumentId> {
    let heard = EndName::BOTH.into_iter().filter_map(|end| air.heard(hop.hop.at, end));
    heard.flat_map(|heard| heard.from).filter_map(|from| owner(air, from.number)).collect()
}

fn in_services(library: &Library, hop: &str) -> Vec<DocumentId> {
    let services = library.services.documents.iter();
    let over = services.filter(|service| service.routes.iter().flatten().any(|one| *one.0 == *hop));
    let named: HashSet<&str> = over.flat_map(|service| service.routes.iter().flatten()).map(|one| &*one.0).collect();
    let hops = library.hops.documents.iter();
    hops.filter(|document| named.contains(&*(document.spec.as_ref() as &Hop).id.0))
        .map(|document| document.at)
        .collect()
}

/// The nearest hops, by the nearer of their ends.
fn nearest(air: &Air<'_>, hop: &ResolvedHop<'_>) -> Vec<DocumentId> {
    let ends: Vec<_> = EndName::BOTH.into_iter().filter_map(|end| air.station(hop.hop.at, end)).collect();
    let away = |number: usize| {
        let station = &air.stations()[number];
        ends.iter().map(|end| end.at.distance(station.at).0).fold(f64::INFINITY, f64::min)
    };
    let mut all: Vec<(f64, DocumentId)> =
        (0..air.stations().len()).filter_map(|number| Some((away(number), owner(air, number)?))).collect();
    all.sort_by(|one, other| one.0.total_cmp(&other.0));
    all.into_iter().map(|(_, hop)| hop).take(FEW).collect()
}

/// Whether anything was left out.
pub(super) fn is_whole(files: &Files, narrow: &Files) -> bool {
    files.read_count() == narrow.read_count()
}
