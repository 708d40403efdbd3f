//! What a document asks for, value by value, however it is nested and in whatever order it is written.

use std::collections::BTreeMap;

use rayon::prelude::*;

use crate::network::{Files, SourceFile};
use crate::place::FileId;
use crate::source::{Document, LineIndex, NodeId, parse};

/// A value and where it is written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Leaf {
    /// As written, on one line.
    pub text: String,
    /// The file, as it is printed.
    pub path: String,
    /// The line, from 1.
    pub line: usize,
}

/// The values of a document by their route.
pub(super) type Leaves = BTreeMap<String, Leaf>;

/// Kind and id of a document, and its values.
type Named = ((String, String), Leaves);

/// The documents of some files that can be part of a gate: by kind and id, each with its values.
pub(super) fn of_side(files: &Files, wanted: impl Fn(FileId) -> bool) -> BTreeMap<(String, String), Leaves> {
    let numbered = (0..).map(FileId).zip(&files.list).filter(|(number, _)| wanted(*number));
    let some: Vec<&SourceFile> = numbered.map(|(_, source)| source).collect();
    let mut found = BTreeMap::new();
    for (name, leaves) in some.par_iter().flat_map_iter(|source| of_file(source)).collect::<Vec<Named>>() {
        found.entry(name).or_insert(leaves);
    }
    found
}

fn of_file(source: &SourceFile) -> Vec<Named> {
    let (lines, mut found) = (LineIndex::new(&source.text), Vec::new());
    for document in &parse(&source.text).documents {
        let word =
            |key| document.get(document.root(), key).and_then(|(_, value)| document.text(document.resolve(value)));
        let (Some(kind), Some(id)) = (word("kind"), word("id")) else { continue };
        let Some(keys) = asked(kind) else { continue };
        let mut walk = Walk { document, path: &source.path, lines: &lines, leaves: Leaves::new() };
        for (key, value) in document.entries(document.root()) {
            let name = document.text(key).unwrap_or_default();
            if keys.is_empty() || keys.contains(&name) {
                walk.node(name.to_owned(), value);
            }
        }
        walk.leaves.entry(String::new()).or_insert_with(|| walk_start(document, &source.path, &lines));
        found.push(((kind.to_owned(), id.to_owned()), walk.leaves));
    }
    found
}

/// The document itself, by its first line.
fn walk_start(document: &Document, path: &str, lines: &LineIndex<'_>) -> Leaf {
    let line = lines.position(document.node(document.root()).span.start).line;
    Leaf { text: String::new(), path: path.to_owned(), line }
}

/// The keys of a kind of document that say what is asked for; none where all do.
fn asked(kind: &str) -> Option<&'static [&'static str]> {
    match kind {
        "network" => {
            Some(&["objectives", "climate", "codes", "limits", "exclude", "rules", "rules_by_path", "waivers"])
        }
        "hop" => Some(&["objectives", "climate", "licence"]),
        "service" => Some(&["from", "to", "objectives", "rain_common_within"]),
        "waiver" => Some(&[]),
        _ => None,
    }
}

struct Walk<'d> {
    document: &'d Document,
    path: &'d str,
    lines: &'d LineIndex<'d>,
    leaves: Leaves,
}

impl Walk<'_> {
    fn node(&mut self, route: String, node: NodeId) {
        let (document, solid) = (self.document, self.document.resolve(node));
        let entries: Vec<(NodeId, NodeId)> = document.entries(solid).collect();
        let items: Vec<NodeId> = document.items(solid).collect();
        if let Some(text) = document.text(solid) {
            let line = self.lines.position(document.node(node).span.start).line;
            let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
            self.leaves.insert(route, Leaf { text, path: self.path.to_owned(), line });
            return;
        }
        for (key, value) in entries {
            let name = document.text(key).unwrap_or_default();
            self.node(format!("{route}.{name}"), value);
        }
        let set = ["exclude", "codes.licence", "licence.codes"].contains(&route.as_str());
        for (number, item) in items.into_iter().enumerate() {
            let name = if set { document.text(document.resolve(item)) } else { paths_of(document, item) };
            let name = name.map_or_else(|| number.to_string(), str::to_owned);
            let mut below = format!("{route}[{name}]");
            // Two that say the same stay two.
            while self.leaves.keys().any(|known| known.starts_with(&below)) {
                below.push('\'');
            }
            self.node(below, item);
        }
    }
}

/// What tells apart the items of `rules_by_path`.
fn paths_of(document: &Document, item: NodeId) -> Option<&str> {
    let (_, value) = document.get(document.resolve(item), "paths")?;
    document.text(document.resolve(value))
}
