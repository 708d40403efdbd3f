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
pub struct Holes(BTreeMap<DocumentId, (String, Vec<Hole>)>);

impl Holes {
    /// Adds those of a document. A hop's own are named by their route alone, others with the document they are in.
    pub fn add(&mut self, document: DocumentId, kind: Kind, id: &Id, holes: Vec<Hole>) {
        let owner = if kind == Kind::Hop { String::new() } else { format!(" of {kind} `{id}`") };
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
    pub fn at(&self, place: &Place) -> Option<(String, Spot)> {
        let (owner, holes) = self.0.get(&place.document)?;
        let route = place.route();
        let hole = holes.iter().find(|hole| lies_in(&hole.route, &route) || lies_in(&route, &hole.route))?;
        Some((format!("`{}`{owner}", hole.route), Spot::Bytes(place.document.file, hole.at.clone())))
    }
}
