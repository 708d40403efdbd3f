//! The documents of one kind, and what an id leads to.

use std::collections::HashMap;
use std::sync::OnceLock;

use crate::place::{DocumentId, Place, Placed};
use crate::spec::Id;
use crate::text::nearest::Vocabulary;

/// A typed document that knows where it stands.
#[derive(Debug)]
pub struct Document<T> {
    /// File and number.
    pub at: DocumentId,
    /// What it says.
    pub spec: T,
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
