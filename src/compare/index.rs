//! The documents of one side by name, and where in them a place is.

use std::collections::HashMap;
use std::path::Path;
use std::sync::OnceLock;

use super::hop_trees::HopTrees;
use super::outline::{Name, Outlines, name_of};
use crate::finding::Spot;
use crate::network::Files;
use crate::place::{DocumentId, FileId, Place, Step};
use crate::source::{Document, LineIndex, NodeId};

/// A route on which the items of lists go by their id where they have one.
pub(super) type Route<'f> = Vec<Step<'f>>;

/// The documents of a side.
pub(super) struct Index<'f> {
    pub files: &'f Files,
    pub outlines: &'f Outlines,
    lines: Vec<OnceLock<LineIndex<'f>>>,
    by_path: OnceLock<HashMap<&'f Path, FileId>>,
}

impl<'f> Index<'f> {
    pub(super) fn of(files: &'f Files, outlines: &'f Outlines) -> Self {
        let lines = files.list.iter().map(|_| OnceLock::new()).collect();
        Self { files, outlines, lines, by_path: OnceLock::new() }
    }

    /// A document that is written differently; its tree is kept, for edits point into it.
    pub(super) fn document(&self, id: DocumentId) -> Option<&'f Document> {
        self.files.get(id.file)?.parsed().documents.get(usize::from(id.number))
    }

    /// The text of a document, to see at a glance that it is the same.
    pub(super) fn text(&self, id: DocumentId) -> Option<&'f str> {
        self.files.get(id.file)?.text.get(self.outlines.get(id)?.own.clone())
    }

    /// What a document calls itself.
    pub(super) fn name(&self, id: DocumentId, trees: &HopTrees<'_>) -> Option<Name> {
        if self.outlines.has(id.file) {
            return self.outlines.get(id).map(|outline| outline.name.clone());
        }
        name_of(trees.document(id)?)
    }

    /// The name of the document a place is in, and its route by names.
    pub(super) fn route<'t>(&self, place: &Place, trees: &'t HopTrees<'_>) -> Option<(Name, Route<'t>)> {
        let (written_in, steps) = trees.written(place);
        let name = self.name(written_in, trees)?;
        let document = trees.document(written_in)?;
        let mut node = Some(document.root());
        let mut route = Vec::new();
        for step in steps {
            match step {
                Step::Index(number) => {
                    node = node.and_then(|node| document.item(node, number));
                    route.push(node.and_then(|node| id_of(document, node)).map_or(step, Step::Named));
                }
                Step::Key(key) | Step::Named(key) => {
                    route.push(step);
                    node = node.and_then(|node| document.get(node, key)).map(|(_, value)| value);
                }
            }
        }
        Some((name, route))
    }

    /// The survey file that a hop names: the file and its text.
    pub(super) fn survey(&self, hop: DocumentId) -> Option<(FileId, &'f str)> {
        let path = self.files.named_in(hop.file, self.outlines.get(hop)?.survey.as_deref()?)?;
        let by_path = self.by_path.get_or_init(|| {
            let numbered = (0_u32..).zip(&self.files.list);
            numbered.map(|(number, source)| (source.origin.as_path(), FileId(number))).collect()
        });
        let file = *by_path.get(path.as_path())?;
        Some((file, &self.files.get(file)?.text))
    }

    /// Path and line of a spot.
    pub(super) fn line(&self, spot: &Spot, trees: &HopTrees<'_>) -> Option<(String, usize)> {
        let found = self.files.locate_in(spot, trees.file(self.files.shown_in(spot)?)?)?;
        self.place(found.file, found.span.start)
    }

    /// Path and line of a byte of a file, whose lines are counted once.
    pub(super) fn place(&self, file: FileId, byte: usize) -> Option<(String, usize)> {
        let source = self.files.get(file)?;
        let lines = self.lines.get(file.0 as usize)?.get_or_init(|| LineIndex::new(&source.text));
        Some((source.path.clone(), lines.position(byte).line))
    }
}

pub(super) fn id_of(document: &Document, node: NodeId) -> Option<&str> {
    document.get(node, "id").and_then(|(_, value)| document.text(value))
}
