//! The documents of one kind, and what an id leads to.

use std::collections::HashMap;
use std::sync::{Arc, OnceLock};

use super::holes::{DocumentHoles, Holed};
use super::inherits::{Inherited, Inherits};
use crate::place::{DocumentId, Place, Placed};
use crate::spec::Id;
use crate::text::nearest::Vocabulary;

/// A typed document that knows where it stands.
#[derive(Debug)]
pub struct Document<T> {
    /// File and number.
    pub at: DocumentId,
    /// What it says; a shelf of many grows without copying it.
    pub spec: Box<T>,
    /// What of it is broken.
    pub holes: Option<Arc<DocumentHoles>>,
    /// What of it is written elsewhere.
    pub inherits: Option<Arc<Inherits>>,
}

impl<T> std::ops::Deref for Document<T> {
    type Target = T;
    fn deref(&self) -> &T {
        &self.spec
    }
}

impl<T> Placed for Document<T> {
    fn place(&self) -> Place {
        Place::document(self.at)
    }
}

impl<T> Holed for Document<T> {
    fn holes(&self) -> Option<&DocumentHoles> {
        self.holes.as_deref()
    }
}

impl<T> Document<T> {
    /// What of it is written elsewhere, in order.
    #[must_use]
    pub fn taken(&self) -> &[Inherited] {
        self.inherits.as_ref().map_or(&[], |inherits| &inherits.list)
    }

    /// A part of it that is a thing of its own, by its place below the document.
    #[must_use]
    pub fn part<'n, P>(&'n self, base: &'static &'static str, index: &[usize], spec: &'n P) -> Part<'n, P> {
        Part { place: self.place().part(base, index), holes: self.holes.as_deref(), spec }
    }
}

/// A part of a document that knows where it stands.
#[derive(Debug)]
pub struct Part<'n, T> {
    place: Place,
    holes: Option<&'n DocumentHoles>,
    /// What it says.
    pub spec: &'n T,
}

impl<T> Clone for Part<'_, T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Part<'_, T> {}

impl<T> std::ops::Deref for Part<'_, T> {
    type Target = T;
    fn deref(&self) -> &T {
        self.spec
    }
}

impl<T> Placed for Part<'_, T> {
    fn place(&self) -> Place {
        self.place
    }
}

impl<T> Holed for Part<'_, T> {
    fn holes(&self) -> Option<&DocumentHoles> {
        self.holes
    }
}

/// What an id leads to.
#[derive(Debug, Clone, Copy)]
pub enum Slot {
    /// A typed document, by its number on the shelf.
    Typed(usize),
    /// A document that could not be typed.
    Broken(DocumentId),
}

/// The documents of one kind.
#[derive(Debug)]
pub struct Shelf<T> {
    /// In order of file.
    pub documents: Vec<Document<T>>,
    /// By id, the broken ones too.
    pub index: HashMap<Id, Slot>,
    /// The ids in order, once all documents are there.
    known: OnceLock<Vocabulary>,
}

impl<T> Default for Shelf<T> {
    fn default() -> Self {
        Self { documents: Vec::new(), index: HashMap::new(), known: OnceLock::new() }
    }
}

/// What came of looking an id up.
#[derive(Debug)]
pub enum Look<'n, T> {
    /// There it is.
    Found(&'n Document<T>),
    /// There, but its own document has faults.
    Broken(DocumentId),
    /// Not there; the nearest id that is.
    Missing(Option<&'n str>),
}

impl<T> Shelf<T> {
    /// Looks an id up.
    #[must_use]
    pub fn look(&self, id: &Id) -> Look<'_, T> {
        match self.index.get(id) {
            Some(Slot::Typed(number)) => Look::Found(&self.documents[*number]),
            Some(Slot::Broken(document)) => Look::Broken(*document),
            None => Look::Missing(self.known().nearest(id)),
        }
    }

    /// The ids there are. To be asked once all documents are on the shelf.
    #[must_use]
    pub fn known(&self) -> &Vocabulary {
        self.known.get_or_init(|| Vocabulary::of(self.index.keys().map(|id| &**id)))
    }

    /// The ids there are, sorted.
    #[must_use]
    pub fn ids(&self) -> &[String] {
        self.known().words()
    }
}
