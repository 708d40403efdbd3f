//! From a spot and a text to bytes: the value that stands there, or the key that does not yet.

use std::ops::Range;

use crate::finding::Spot;
use crate::network::Files;
use crate::place::{FileId, Place, Step};
use crate::source::{Document, NodeId, NodeKind};

/// Bytes of a file and what to put in their place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Bytes {
    file: FileId,
    span: Range<usize>,
    text: String,
}

impl Bytes {
    /// Whether both cannot be made in one go: they share bytes, or put something in at the same place.
    pub(super) fn touches(&self, other: &Self) -> bool {
        self.file == other.file && self.span.start <= other.span.end && other.span.start <= self.span.end
    }
}

/// The bytes an edit is about. `None` where it cannot be made without more than that, such as in the midst of an alias.
pub(super) fn resolve(files: &Files, spot: &Spot, text: &str) -> Option<Bytes> {
    match spot {
        Spot::Bytes(file, span) => Some(Bytes { file: *file, span: span.clone(), text: text.to_owned() }),
        Spot::Field(place) => field(files, place, text),
        Spot::Entry(..) | Spot::Path(_) => None,
    }
}

fn field(files: &Files, place: &Place, text: &str) -> Option<Bytes> {
    let file = place.document.file;
    let source = files.get(file)?;
    let document = source.parsed().documents.get(usize::from(place.document.number))?;
    let steps: Vec<Step<'_>> = place.steps().collect();
    let (last, way) = steps.split_last()?;
    let mut node = document.root();
    for step in way {
        node = child(document, node, *step)?;
        if matches!(document.node(node).kind, NodeKind::Alias { .. }) {
            // What is changed here would change wherever it is used.
            return None;
        }
    }
    if let Some(value) = child(document, node, *last) {
        // An empty list has nothing in it that could be lost.
        let whole = match &document.node(value).kind {
            NodeKind::Scalar { .. } => true,
            NodeKind::Sequence(items) => items.is_empty(),
            NodeKind::Mapping(_) | NodeKind::Alias { .. } => false,
        };
        let span = document.node(value).span.clone();
        return whole.then(|| Bytes { file, span, text: text.to_owned() });
    }
    if let (Step::Index(number), NodeKind::Sequence(items)) = (last, &document.node(node).kind) {
        let span = document.node(node).span.clone();
        let items: Vec<_> = items.iter().map(|item| document.node(*item).span.clone()).collect();
        return (*number == items.len()).then(|| appended(&source.text, file, &span, &items, text)).flatten();
    }
    let (Step::Key(key), NodeKind::Mapping(entries)) = (last, &document.node(node).kind) else { return None };
    let (first, (_, value)) = (entries.first()?.0, entries.last()?);
    let mapping = &document.node(node).span;
    let end = document.node(*value).span.end;
    if source.text[mapping.clone()].starts_with('{') {
        return Some(Bytes { file, span: end..end, text: format!(", {key}: {text}") });
    }
    // On a line of its own after the last one of the mapping, indented as its first key is.
    let start = document.node(first).span.start;
    let line = source.text[..start].rfind('\n').map_or(0, |at| at + 1);
    let indent = " ".repeat(source.text[line..start].chars().count());
    let (line_end, ending) = end_of_line(&source.text, end);
    Some(Bytes { file, span: line_end..line_end, text: format!("{ending}{indent}{key}: {text}") })
}

/// Whether a value stands in something that has an anchor, so that it may be repeated elsewhere.
pub(super) fn is_anchored(files: &Files, place: &Place) -> bool {
    let source = files.get(place.document.file);
    let document = source.and_then(|source| source.parsed().documents.get(usize::from(place.document.number)));
    let Some(document) = document else { return false };
    let mut node = document.root();
    let mut anchored = document.node(node).anchor.is_some();
    for step in place.steps() {
        let Some(next) = child(document, node, step) else { break };
        node = next;
        anchored |= document.node(node).anchor.is_some();
    }
    anchored
}

/// One more item at the end of a list that has some: in the line where it stands in brackets, else on a line of its own with
/// the dash where the others have it.
fn appended(source: &str, file: FileId, list: &Range<usize>, items: &[Range<usize>], text: &str) -> Option<Bytes> {
    let (first, end) = (items.first()?.start, items.last()?.end);
    if source[list.clone()].starts_with('[') {
        return Some(Bytes { file, span: end..end, text: format!(", {text}") });
    }
    let line = source[..first].rfind('\n').map_or(0, |at| at + 1);
    let dash = source[line..first].rfind('-')?;
    let indent = " ".repeat(source[line..line + dash].chars().count());
    let (line_end, ending) = end_of_line(source, end);
    Some(Bytes { file, span: line_end..line_end, text: format!("{ending}{indent}- {text}") })
}

/// Where the line ends that a byte is in, and how lines of the text end.
fn end_of_line(source: &str, byte: usize) -> (usize, &'static str) {
    let rest = &source[byte..];
    let end = byte + rest.find('\n').unwrap_or(rest.len());
    let end = if source[..end].ends_with('\r') { end - 1 } else { end };
    (end, if source.contains("\r\n") { "\r\n" } else { "\n" })
}

fn child(document: &Document, node: NodeId, step: Step<'_>) -> Option<NodeId> {
    match step {
        Step::Key(key) => document.get(node, key).map(|(_, value)| value),
        Step::Index(number) => document.item(node, number),
        Step::Named(_) => None,
    }
}

/// The text of a file with the edits that are in it, which do not overlap.
pub(super) fn applied(text: &str, file: u32, edits: &[&Bytes]) -> String {
    let mut own: Vec<&&Bytes> = edits.iter().filter(|edit| edit.file.0 == file).collect();
    own.sort_by_key(|edit| std::cmp::Reverse(edit.span.start));
    let mut out = text.to_owned();
    for edit in own {
        out.replace_range(edit.span.clone(), &edit.text);
    }
    out
}
