//! The texts that were loaded, and the bytes a place stands for.

use std::collections::HashMap;
use std::ops::Range;
use std::path::{Path, PathBuf};
use std::sync::{Arc, OnceLock};

use super::inherits::{Inherited, Inherits};
use crate::door;
use crate::finding::Spot;
use crate::place::{DocumentId, FileId, Place, Step};
use crate::source::{LineTable, Parsed, Position, parse};
use crate::standard::Part;

/// Whose a file is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Home {
    /// It lies in the folder of a network that is looked at.
    #[default]
    Own,
    /// It lies in a library that the network shares with others.
    Shared,
    /// It is a standard part, shipped in the program.
    Standard,
}

/// A file as it was read.
#[derive(Debug)]
pub struct SourceFile {
    /// Path as it is printed: relative where it can be, with forward slashes.
    pub path: String,
    /// Path as it was found.
    pub origin: PathBuf,
    /// The text, byte-order mark included.
    pub text: String,
    /// Whose it is: what is not the network's own is never fixed or renamed from here.
    pub home: Home,
    /// Trees are dropped after typing and made again only for a file that something is printed about.
    tree: OnceLock<Parsed>,
    /// Made for a file that something is printed about.
    lines: OnceLock<LineTable>,
}

impl SourceFile {
    /// A file with its text.
    #[must_use]
    pub fn new(path: String, origin: PathBuf, text: String) -> Self {
        Self { path, origin, text, home: Home::Own, tree: OnceLock::new(), lines: OnceLock::new() }
    }

    /// A standard part, by its name: it lies in no folder.
    #[must_use]
    pub fn standard(part: &Part) -> Self {
        let name = part.name();
        Self { home: Home::Standard, ..Self::new(name.clone(), name.into(), part.text.to_owned()) }
    }

    /// Its documents, with the places of everything in them.
    pub fn parsed(&self) -> &Parsed {
        self.tree.get_or_init(|| parse(&self.text))
    }

    /// The line and column of a byte: the lines are counted once, however many places are asked for.
    pub fn position(&self, byte: usize) -> Position {
        self.lines.get_or_init(|| LineTable::new(&self.text)).position(&self.text, byte)
    }

    /// The bytes at the end of a route in a document of this file, looked up in its tree.
    fn find<'s>(
        &self,
        document: DocumentId,
        mut steps: Vec<Step<'s>>,
        entry: Option<&'s str>,
        tree: &Parsed,
    ) -> Option<Concrete> {
        let file = document.file;
        let Some(document) = tree.documents.get(usize::from(document.number)) else {
            // Where reading stopped, for a document that could not be read to its end.
            let fault = tree.faults.iter().find(|fault| fault.kind.ends_document())?;
            return Some(Concrete { file, span: fault.span.clone(), definition: None });
        };
        steps.extend(entry.map(Step::Key));
        let found = document.find(&steps);
        let span = if entry.is_some() { found.key.unwrap_or(found.span) } else { found.span };
        // A label over many lines hides what it points at: keep its first line.
        let text = &self.text;
        let line_end = text[span.start..span.end].find(['\n', '\r']).map_or(span.end, |at| span.start + at);
        Some(Concrete { file, span: span.start..line_end, definition: found.definition })
    }
}

/// All files of a run.
#[derive(Debug, Default)]
pub struct Files {
    /// In order of path.
    pub list: Vec<SourceFile>,
    /// What documents take in from elsewhere.
    pub(super) inherits: HashMap<DocumentId, Arc<Inherits>>,
}

/// A spot with its bytes looked up.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Concrete {
    /// The file.
    pub file: FileId,
    /// The bytes.
    pub span: Range<usize>,
    /// Where the value is defined, if an alias stands at the spot.
    pub definition: Option<Range<usize>>,
}

impl Files {
    /// The file with this number.
    #[must_use]
    pub fn get(&self, file: FileId) -> Option<&SourceFile> {
        self.list.get(file.0 as usize)
    }

    /// How many were read: what the program ships is not.
    #[must_use]
    pub fn read_count(&self) -> usize {
        self.list.iter().filter(|file| file.home != Home::Standard).count()
    }

    /// Where a file lies that a document in another file names; `None` if its name is none that may be read.
    #[must_use]
    pub fn named_in(&self, file: FileId, name: &str) -> Option<PathBuf> {
        let folder = self.get(file)?.origin.parent().unwrap_or(Path::new(""));
        door::path::named(folder, name).ok()
    }

    /// Where the value at a place is written, if that is not where it counts: what is taken in, and the route to it there.
    #[must_use]
    pub fn taken(&self, place: &Place) -> Option<(&Inherited, Vec<Step<'_>>)> {
        self.inherits.get(&place.document)?.find(place)
    }

    /// The documents that a document takes values from, each once.
    #[must_use]
    pub fn givers(&self, document: DocumentId) -> Vec<DocumentId> {
        self.inherits.get(&document).map(|inherits| inherits.documents()).unwrap_or_default()
    }

    /// The file in which a spot is shown: that of the document the value is written in.
    #[must_use]
    pub fn shown_in(&self, spot: &Spot) -> Option<FileId> {
        match spot {
            Spot::Field(place) | Spot::Entry(place, _) => {
                Some(self.taken(place).map_or(place.document, |(taken, _)| taken.from).file)
            }
            Spot::Bytes(..) | Spot::Path(_) => spot.file(),
        }
    }

    /// The bytes of a spot; `None` for a path that has no text.
    #[must_use]
    pub fn locate(&self, spot: &Spot) -> Option<Concrete> {
        if let Spot::Bytes(file, span) = spot {
            return Some(Concrete { file: *file, span: span.clone(), definition: None });
        }
        self.locate_in(spot, self.get(self.shown_in(spot)?)?.parsed())
    }

    /// The same looked up in the tree of the file it is shown in, so that none need be kept.
    #[must_use]
    pub fn locate_in(&self, spot: &Spot, tree: &Parsed) -> Option<Concrete> {
        let (place, entry) = match spot {
            Spot::Bytes(file, span) => return Some(Concrete { file: *file, span: span.clone(), definition: None }),
            Spot::Field(place) => (place, None),
            Spot::Entry(place, name) => (place, Some(name.as_str())),
            Spot::Path(_) => return None,
        };
        let (document, steps) = match self.taken(place) {
            Some((taken, steps)) => (taken.from, steps),
            None => (place.document, place.steps().collect()),
        };
        self.get(document.file)?.find(document, steps, entry, tree)
    }

    /// Where a document takes in the value at a place, if it is written in another one: the value or the mapping that lacks it.
    #[must_use]
    pub fn taken_at(&self, place: &Place) -> Option<(&Inherited, Concrete)> {
        let (taken, _) = self.taken(place).filter(|(taken, _)| taken.from != place.document)?;
        let source = self.get(place.document.file)?;
        let here = source.find(place.document, place.steps().collect(), None, source.parsed())?;
        Some((taken, here))
    }
}
