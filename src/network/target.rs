//! What a spot is called by people who never saw its file: kind, id and route, the items of lists by their own ids.
//!
//! `site crusher, supports[roof-pole].height` stays what it is when the file is moved, edited above or put in another order.

use std::ops::Range;
use std::path::Path;

use super::files::{Files, SourceFile};
use crate::finding::Spot;
use crate::place::route::spelled;
use crate::place::{Place, Step};
use crate::source::{Document, NodeId, NodeKind};

/// What a spot is called.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Target {
    /// The kind of the document; `file` where no document can be read.
    pub kind: String,
    /// Its id; the name of the file where there is none.
    pub id: String,
    /// The way into it.
    pub route: String,
}

impl Files {
    /// What a spot is called.
    #[must_use]
    pub fn target(&self, spot: &Spot) -> Target {
        let file = |file| self.get(file);
        // What is only put in order in its own document goes by where it is written there.
        let steps = |place: &Place| match self.taken(place).filter(|(taken, _)| taken.from == place.document) {
            Some((_, steps)) => steps,
            None => place.steps().collect(),
        };
        match spot {
            Spot::Field(place) => file(place.document.file).map(|file| of_place(file, place, steps(place), None)),
            Spot::Entry(place, name) => {
                file(place.document.file).map(|file| of_place(file, place, steps(place), Some(name)))
            }
            Spot::Bytes(id, span) => file(*id).map(|file| of_bytes(file, span)),
            Spot::Path(path) => Some(of_file(Path::new(path))),
        }
        .unwrap_or_default()
    }
}

fn of_place(file: &SourceFile, place: &Place, steps: Vec<Step<'_>>, entry: Option<&str>) -> Target {
    let Some(document) = file.parsed().documents.get(usize::from(place.document.number)) else {
        return of_file(&file.origin);
    };
    let mut steps = document.by_name(steps);
    steps.extend(entry.map(Step::Key));
    of_document(document, file, spelled(steps))
}

/// The deepest value that holds the bytes.
fn of_bytes(file: &SourceFile, span: &Range<usize>) -> Target {
    let inside = |document: &Document, node: NodeId| {
        let own = &document.node(node).span;
        own.start <= span.start && span.start < own.end.max(own.start + 1)
    };
    let starts = |document: &Document, node: NodeId| document.node(node).span.start <= span.start;
    let documents = &file.parsed().documents;
    let mut found = before(documents, |document| starts(document, document.root()));
    let Some((_, document)) = found.find(|(_, document)| inside(document, document.root())) else {
        return of_file(&file.origin);
    };
    let (mut route, mut at) = (Vec::new(), document.root());
    loop {
        match &document.node(document.resolve(at)).kind {
            NodeKind::Mapping(entries) => {
                let mut near = before(entries, |(key, _)| starts(document, *key)).map(|(_, entry)| *entry);
                let entry = near.find(|(key, value)| inside(document, *key) || inside(document, *value));
                let Some((key, value)) = entry else { break };
                route.push(Step::Key(document.text(key).unwrap_or("?")));
                if inside(document, key) {
                    break;
                }
                at = value;
            }
            NodeKind::Sequence(items) => {
                let mut near = before(items, |item| starts(document, *item));
                let Some((index, item)) = near.find(|(_, item)| inside(document, **item)) else { break };
                route.push(document.name(*item).map_or(Step::Index(index), Step::Named));
                at = *item;
            }
            NodeKind::Scalar { .. } | NodeKind::Alias { .. } => break,
        }
    }
    of_document(document, file, spelled(route))
}

/// The last two of a list in order of place that start before a byte, with their numbers: only they can hold it, for
/// nothing overlaps but a value that is not written and what follows it. However long the list, few are looked at.
fn before<T>(list: &[T], starts: impl Fn(&T) -> bool) -> impl Iterator<Item = (usize, &T)> {
    let end = list.partition_point(starts);
    let from = end.saturating_sub(2);
    list[from..end].iter().enumerate().map(move |(number, one)| (from + number, one))
}

fn of_document(document: &Document, file: &SourceFile, route: String) -> Target {
    let word = |key| document.get(document.root(), key).and_then(|(_, value)| document.text(value));
    match (word("kind"), word("id")) {
        (Some(kind), Some(id)) => Target { kind: kind.into(), id: id.into(), route },
        _ => Target { route, ..of_file(&file.origin) },
    }
}

/// All that is left to go by is the name of the file, whatever folder it lies in.
fn of_file(path: &Path) -> Target {
    let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
    Target { kind: "file".into(), id: name, route: String::new() }
}
