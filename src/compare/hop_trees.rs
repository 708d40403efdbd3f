//! The trees of the files of one hop: made when the first thing is said of it, and let go with it.
//!
//! A file that holds more than one document may serve many hops. Its tree is made once and kept.

use std::cell::OnceCell;
use std::collections::BTreeMap;

use crate::network::Files;
use crate::place::{DocumentId, FileId, Place, Step};
use crate::source::{Document, Parsed, parse};
use crate::verdict::OpenHop;

/// The trees that are needed to speak of one hop.
pub(super) struct HopTrees<'f> {
    files: &'f Files,
    own: Vec<FileId>,
    made: OnceCell<BTreeMap<FileId, Parsed>>,
}

impl<'f> HopTrees<'f> {
    /// Those of a hop on one side; of no hop, if it is not there.
    pub(super) fn of(files: &'f Files, hop: Option<OpenHop<'_>>) -> Self {
        let mut own: Vec<FileId> = hop.iter().flat_map(OpenHop::documents).map(|document| document.file).collect();
        own.sort_unstable();
        own.dedup();
        own.retain(|file| files.get(*file).is_some_and(|file| !file.text.contains("\n---")));
        Self { files, own, made: OnceCell::new() }
    }

    /// Where the value at a place is written: the document, and the route in it.
    pub(super) fn written(&self, place: &Place) -> (DocumentId, Vec<Step<'_>>) {
        match self.files.taken(place) {
            Some((taken, steps)) => (taken.from, steps),
            None => (place.document, place.steps().collect()),
        }
    }

    pub(super) fn file(&self, file: FileId) -> Option<&Parsed> {
        if self.own.binary_search(&file).is_err() {
            return Some(self.files.get(file)?.parsed());
        }
        let made = self.made.get_or_init(|| {
            let tree = |file: &FileId| Some((*file, parse(&self.files.get(*file)?.text)));
            self.own.iter().filter_map(tree).collect()
        });
        made.get(&file)
    }

    pub(super) fn document(&self, id: DocumentId) -> Option<&Document> {
        self.file(id.file)?.documents.get(usize::from(id.number))
    }
}
