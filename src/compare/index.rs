//! The documents of one side by name, and where in them a place is.

use std::collections::{BTreeMap, HashMap};
use std::path::Path;
use std::sync::OnceLock;

use crate::network::Files;
use crate::place::{DocumentId, FileId, Place, Step};
use crate::source::{Document, LineIndex, NodeId};

/// Kind and id.
pub(super) type Name = (String, String);

/// A route on which the items of lists go by their id where they have one.
pub(super) type Route<'f> = Vec<Step<'f>>;

/// The documents of a side by name.
pub(super) struct Index<'f> {
    pub files: &'f Files,
    pub at: BTreeMap<Name, DocumentId>,
    pub names: HashMap<DocumentId, Name>,
    lines: Vec<OnceLock<LineIndex<'f>>>,
    by_path: OnceLock<HashMap<&'f Path, FileId>>,
}

/// The route of the field in which a hop names its survey file.
pub(super) const SURVEY: [Step<'static>; 2] = [Step::Key("path"), Step::Key("csv")];

impl<'f> Index<'f> {
    pub(super) fn of(files: &'f Files) -> Self {
        let (mut at, mut names) = (BTreeMap::new(), HashMap::new());
        for (file, source) in (0_u32..).zip(&files.list) {
            for (number, document) in (0..=u16::MAX).zip(&source.parsed().documents) {
                let word = |key| document.get(document.root(), key).and_then(|(_, value)| document.text(value));
                if let (Some(kind), Some(id)) = (word("kind"), word("id")) {
                    let (name, id) = ((kind.to_owned(), id.to_owned()), DocumentId { file: FileId(file), number });
                    names.insert(id, name.clone());
                    at.entry(name).or_insert(id);
                }
            }
        }
        let lines = files.list.iter().map(|_| OnceLock::new()).collect();
        Self { files, at, names, lines, by_path: OnceLock::new() }
    }

    pub(super) fn document(&self, id: DocumentId) -> Option<&'f Document> {
        self.files.get(id.file)?.parsed().documents.get(usize::from(id.number))
    }

    /// The text of a document, to see at a glance that it is the same.
    pub(super) fn text(&self, id: DocumentId) -> Option<&'f str> {
        let document = self.document(id)?;
        self.files.get(id.file)?.text.get(document.node(document.root()).span.clone())
    }

    /// The name of the document a place is in, and its route by names.
    pub(super) fn route(&self, place: &Place) -> Option<(Name, Route<'f>)> {
        let name = self.names.get(&place.document)?.clone();
        let document = self.document(place.document)?;
        let mut node = Some(document.root());
        let mut route = Vec::new();
        for step in place.steps() {
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

    /// The survey file that a hop names: the node of its name, the file and its text.
    pub(super) fn survey(&self, hop: DocumentId) -> Option<(FileId, &'f str)> {
        let document = self.document(hop)?;
        let mut steps = SURVEY.iter().copied();
        let node = steps.try_fold(document.root(), |node, step| match step {
            Step::Key(key) => Some(document.get(node, key)?.1),
            Step::Index(_) | Step::Named(_) => None,
        });
        let path = self.files.named_in(hop.file, document.text(node?)?)?;
        let by_path = self.by_path.get_or_init(|| {
            let numbered = (0_u32..).zip(&self.files.list);
            numbered.map(|(number, source)| (source.origin.as_path(), FileId(number))).collect()
        });
        let file = *by_path.get(path.as_path())?;
        Some((file, &self.files.get(file)?.text))
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
