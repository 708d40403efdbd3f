//! Broken and missing values: what nothing may be concluded from.
//!
//! A document with a fault is typed all the same, with stand-ins for what is broken, so that everything else in it is
//! judged in the same run. This list knows the stand-ins: the sheet takes a field that is one for missing, and findings that
//! touch one are dropped.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::finding::Spot;
use crate::place::route::lies_in;
use crate::place::{DocumentId, Place, Placed};
use crate::shape::Hole;
use crate::spec::{Id, Kind};

/// The holes of a library.
#[derive(Debug, Default)]
pub struct Holes(BTreeMap<DocumentId, Arc<DocumentHoles>>);

/// The holes of one document.
#[derive(Debug)]
pub struct DocumentHoles {
    /// The document as a message names it; none for a hop, whose fields are named by themselves.
    owner: Option<Owner>,
    list: Vec<Hole>,
}

/// A document or a part of one that knows what of it is broken, so that nobody computes on a stand-in.
pub trait Holed: Placed {
    /// What is broken in its document; none if that is sound.
    fn holes(&self) -> Option<&DocumentHoles>;
}

/// A document as a message names it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Owner {
    /// Its kind.
    pub kind: Kind,
    /// Its id.
    pub id: Id,
}

impl std::fmt::Display for Owner {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} `{}`", self.kind, self.id)
    }
}

/// What is broken: a field, and the document it is in unless that is the hop itself.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HoleName {
    /// Its route in the document.
    pub field: String,
    /// The document.
    pub owner: Option<Owner>,
}

impl std::fmt::Display for HoleName {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "`{}`", self.field)?;
        self.owner.as_ref().map_or(Ok(()), |owner| write!(f, " of {owner}"))
    }
}

impl<T: Holed + ?Sized> Holed for &T {
    fn holes(&self) -> Option<&DocumentHoles> {
        (**self).holes()
    }
}

impl Holes {
    /// Adds those of a document. A hop's own are named by their route alone, others with the document they are in.
    pub fn add(&mut self, document: DocumentId, kind: Kind, id: &Id, holes: Vec<Hole>) {
        let owner = (kind != Kind::Hop).then(|| Owner { kind, id: id.clone() });
        if !holes.is_empty() {
            self.0.insert(document, Arc::new(DocumentHoles { owner, list: holes }));
        }
    }

    /// Those of one document.
    #[must_use]
    pub fn of(&self, document: DocumentId) -> Option<Arc<DocumentHoles>> {
        self.0.get(&document).cloned()
    }

    /// Whether there is none at all.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The hole that a place lies in, or that lies in the place: how a message names it, and where its fault is shown.
    #[must_use]
    pub fn at(&self, place: &Place) -> Option<(HoleName, Spot)> {
        self.0.get(&place.document)?.at(place)
    }
}

impl DocumentHoles {
    /// The hole that a place lies in, or that lies in the place.
    #[must_use]
    pub fn at(&self, place: &Place) -> Option<(HoleName, Spot)> {
        let route = place.route();
        let hole = self.list.iter().find(|hole| lies_in(&hole.route, &route) || lies_in(&route, &hole.route))?;
        let name = HoleName { field: hole.named.clone(), owner: self.owner.clone() };
        Some((name, Spot::Bytes(hole.file, hole.at.clone())))
    }
}
