//! Broken and missing values: what nothing may be concluded from.
//!
//! A document with a fault is typed all the same, with stand-ins for what is broken, so that everything else in it is
//! judged in the same run. This list knows the stand-ins; the sheet drops the lines that came from one, and findings that
//! touch one are dropped too.

use std::collections::BTreeMap;

use crate::finding::Spot;
use crate::place::route::lies_in;
use crate::place::{DocumentId, Place};
use crate::shape::Hole;
use crate::spec::{Id, Kind};

/// The holes of a library.
#[derive(Debug, Default)]
pub struct Holes(BTreeMap<DocumentId, (Option<Owner>, Vec<Hole>)>);

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

impl Holes {
    /// Adds those of a document. A hop's own are named by their route alone, others with the document they are in.
    pub fn add(&mut self, document: DocumentId, kind: Kind, id: &Id, holes: Vec<Hole>) {
        let owner = (kind != Kind::Hop).then(|| Owner { kind, id: id.clone() });
        if !holes.is_empty() {
            self.0.insert(document, (owner, holes));
        }
    }

    /// Whether there is none at all.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The hole that a place lies in, or that lies in the place: how a message names it, and where its fault is shown.
    #[must_use]
    pub fn at(&self, place: &Place) -> Option<(HoleName, Spot)> {
        let (owner, holes) = self.0.get(&place.document)?;
        let route = place.route();
        let hole = holes.iter().find(|hole| lies_in(&hole.route, &route) || lies_in(&route, &hole.route))?;
        let name = HoleName { field: hole.route.clone(), owner: owner.clone() };
        Some((name, Spot::Bytes(place.document.file, hole.at.clone())))
    }
}
