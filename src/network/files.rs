//! The texts that were loaded, and the bytes a place stands for.

use std::ops::Range;
use std::path::{Path, PathBuf};
use std::sync::OnceLock;

use crate::door;
use crate::finding::Spot;
use crate::place::{FileId, Place, Step};
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
    /// Whose it is: what is not the network's own is never mended or renamed from here.
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

    /// The bytes of a spot in this file, looked up in its tree.
    pub(super) fn locate(&self, spot: &Spot, tree: &Parsed) -> Option<Concrete> {
        match spot {
            Spot::Bytes(file, span) => Some(Concrete { file: *file, span: span.clone(), definition: None }),
            Spot::Field(place) => self.find(place, None, tree),
            Spot::Entry(place, name) => self.find(place, Some(name), tree),
            Spot::Path(_) => None,
        }
    }

    fn find(&self, place: &Place, entry: Option<&str>, tree: &Parsed) -> Option<Concrete> {
        let file = place.document.file;
        let Some(document) = tree.documents.get(usize::from(place.document.number)) else {
            // Where reading stopped, for a document that could not be read to its end.
            let fault = tree.faults.iter().find(|fault| fault.kind.ends_document())?;
            return Some(Concrete { file, span: fault.span.clone(), definition: None });
        };
        let mut steps: Vec<Step<'_>> = place.steps().collect();
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

    /// The bytes of a spot; `None` for a path that has no text.
    #[must_use]
    pub fn locate(&self, spot: &Spot) -> Option<Concrete> {
        if let Spot::Bytes(file, span) = spot {
            return Some(Concrete { file: *file, span: span.clone(), definition: None });
        }
        let source = self.get(spot.file()?)?;
        source.locate(spot, source.parsed())
    }

    /// The same looked up in the tree of its file, so that none need be kept.
    #[must_use]
    pub fn locate_in(&self, spot: &Spot, tree: &Parsed) -> Option<Concrete> {
        self.get(spot.file()?)?.locate(spot, tree)
    }
}
