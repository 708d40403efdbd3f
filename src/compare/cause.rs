//! Why a number changed: the edited fields among the inputs of its line.
//!
//! Documents are matched by kind and id, items of a list by their id where they have one, and what is written differently
//! is an edit. A line goes back to an edit if one of its inputs is the edited field, holds it or lies inside it. An input
//! that only one side has was reached through a reference, and the edit is then that of the reference. A survey file that
//! reads otherwise is an edit of the field that names it.

use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::path::{Path, PathBuf};
use std::sync::OnceLock;

use super::survey::first_difference;
use crate::door;
use crate::finding::Spot;
use crate::network::Files;
use crate::place::route::spelled;
use crate::place::{DocumentId, FileId, Place, Step};
use crate::source::{Document, LineIndex, NodeId, NodeKind, to_value};

/// What sort of document an edit is in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Class {
    /// A hop or a site.
    Design,
    /// The network document: objectives, climate, codes, severities.
    Network,
    /// Equipment.
    Catalogue,
}

impl Class {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Design => "design",
            Self::Network => "network",
            Self::Catalogue => "catalogue",
        }
    }

    fn of(kind: &str) -> Self {
        match kind {
            "network" => Self::Network,
            "radio" | "antenna" | "bracket" | "cable" | "supply" | "arrester" => Self::Catalogue,
            _ => Self::Design,
        }
    }
}

/// An edited field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cause {
    /// What sort of document it is in.
    pub class: Class,
    /// The document: `hop ridge`.
    pub document: String,
    /// The field: `ends.a.transmit_power`.
    pub route: String,
    /// What was written; `None` if nothing.
    pub before: Option<String>,
    /// What is written; `None` if nothing.
    pub after: Option<String>,
    /// The file, as it is printed.
    pub path: String,
    /// The line, from 1.
    pub line: usize,
    /// The place is one of the old side: the new one has it no longer.
    pub gone: bool,
}

/// Kind and id.
type Name = (String, String);

/// A route on which the items of lists go by their id where they have one.
type Route<'f> = Vec<Step<'f>>;

struct Edit<'f> {
    name: Name,
    route: Route<'f>,
    /// Every word in what was written, and in what is.
    words: [BTreeSet<String>; 2],
    cause: Cause,
}

/// All edits between two sides, to trace lines back to.
pub(super) struct Edits<'f> {
    sides: [Index<'f>; 2],
    list: Vec<Edit<'f>>,
    by_name: HashMap<Name, Vec<usize>>,
}

/// The documents of a side by name.
struct Index<'f> {
    files: &'f Files,
    at: BTreeMap<Name, DocumentId>,
    names: HashMap<DocumentId, Name>,
    lines: Vec<OnceLock<LineIndex<'f>>>,
    by_path: OnceLock<HashMap<&'f Path, FileId>>,
}

/// The route of the field in which a hop names its survey file.
const SURVEY: [Step<'static>; 2] = [Step::Key("path"), Step::Key("csv")];

/// The longest text of a field that a cause repeats in full, in characters.
const LONGEST: usize = 60;

impl<'f> Index<'f> {
    fn of(files: &'f Files) -> Self {
        let (mut at, mut names) = (BTreeMap::new(), HashMap::new());
        for (file, source) in (0_u32..).zip(&files.list) {
            for (number, document) in (0_u16..).zip(&source.parsed().documents) {
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

    fn document(&self, id: DocumentId) -> Option<&'f Document> {
        self.files.get(id.file)?.parsed().documents.get(usize::from(id.number))
    }

    /// The text of a document, to see at a glance that it is the same.
    fn text(&self, id: DocumentId) -> Option<&'f str> {
        let document = self.document(id)?;
        self.files.get(id.file)?.text.get(document.node(document.root()).span.clone())
    }

    /// The name of the document a place is in, and its route by names.
    fn route(&self, place: &Place) -> Option<(Name, Route<'f>)> {
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
    fn survey(&self, hop: DocumentId) -> Option<(FileId, &'f str)> {
        let document = self.document(hop)?;
        let steps = SURVEY.iter().copied();
        let node = steps.fold(Some(document.root()), |node, step| match step {
            Step::Key(key) => Some(document.get(node?, key)?.1),
            Step::Index(_) | Step::Named(_) => None,
        });
        let folder = self.files.get(hop.file)?.origin.parent().unwrap_or(Path::new(""));
        let path: PathBuf = door::path::named(folder, document.text(node?)?).ok()?;
        let by_path = self.by_path.get_or_init(|| {
            let numbered = (0_u32..).zip(&self.files.list);
            numbered.map(|(number, source)| (source.origin.as_path(), FileId(number))).collect()
        });
        let file = *by_path.get(path.as_path())?;
        Some((file, &self.files.get(file)?.text))
    }

    /// Path and line of a byte of a file, whose lines are counted once.
    fn place(&self, file: FileId, byte: usize) -> Option<(String, usize)> {
        let source = self.files.get(file)?;
        let lines = self.lines.get(file.0 as usize)?.get_or_init(|| LineIndex::new(&source.text));
        Some((source.path.clone(), lines.position(byte).line))
    }
}

fn id_of(document: &Document, node: NodeId) -> Option<&str> {
    document.get(node, "id").and_then(|(_, value)| document.text(value))
}

impl<'f> Edits<'f> {
    /// Everything written differently in documents that both sides have.
    pub(super) fn between(old: &'f Files, new: &'f Files) -> Self {
        let sides = [Index::of(old), Index::of(new)];
        let mut differences = Differences { sides: &sides, list: Vec::new() };
        for (name, before) in &sides[0].at {
            let Some(after) = sides[1].at.get(name) else { continue };
            let both = sides[0].text(*before).zip(sides[1].text(*after));
            if both.is_none_or(|(before, after)| before != after) {
                differences.documents(name, [*before, *after]);
            }
            if name.0 == "hop" {
                differences.surveys(name, [*before, *after]);
            }
        }
        let mut list = differences.list;
        let order = |edit: &Edit<'_>| (edit.cause.path.clone(), edit.cause.line, edit.cause.route.clone());
        list.sort_by_cached_key(order);
        let mut by_name: HashMap<Name, Vec<usize>> = HashMap::new();
        for (number, edit) in list.iter().enumerate() {
            by_name.entry(edit.name.clone()).or_default().push(number);
        }
        Self { sides, list, by_name }
    }

    pub(super) fn into_causes(self) -> Vec<Cause> {
        self.list.into_iter().map(|edit| edit.cause).collect()
    }

    /// Path and line of a spot of the old side, 0, or the new one, 1.
    pub(super) fn line(&self, side: usize, spot: &Spot) -> Option<(String, usize)> {
        let index = &self.sides[side];
        let found = index.files.locate(spot)?;
        index.place(found.file, found.span.start)
    }

    /// Edits of which rules are judged, and how.
    pub(super) fn of_severities(&self) -> BTreeSet<usize> {
        let settings = |edit: &Edit<'_>| {
            edit.name.0 == "network" && matches!(edit.route.first(), Some(Step::Key("rules" | "rules_by_path")))
        };
        (0..).zip(&self.list).filter(|(_, edit)| settings(edit)).map(|(number, _)| number).collect()
    }

    pub(super) fn cause(&self, number: usize) -> &Cause {
        &self.list[number].cause
    }

    /// The edits behind something that goes back to these places of each side, in a hop with these documents.
    pub(super) fn behind(&self, places: [&[Place]; 2], hop: [Option<DocumentId>; 2]) -> BTreeSet<usize> {
        let routes = [0, 1].map(|side| -> BTreeSet<(Name, Route<'_>)> {
            places[side].iter().filter_map(|place| self.sides[side].route(place)).collect()
        });
        let mut found = BTreeSet::new();
        for (name, route) in routes.iter().flatten() {
            for &number in self.by_name.get(name).into_iter().flatten() {
                let edited = &self.list[number].route;
                if edited.starts_with(route) || route.starts_with(edited) {
                    found.insert(number);
                }
            }
        }
        // What is reached on one side only was reached through something that names it.
        let near: BTreeSet<&Name> = routes
            .iter()
            .flatten()
            .map(|(name, _)| name)
            .chain((0..2).filter_map(|i| self.sides[i].names.get(&hop[i]?)))
            .collect();
        let close: Vec<usize> = near.iter().filter_map(|name| self.by_name.get(*name)).flatten().copied().collect();
        for (side, other) in [(0, 1), (1, 0)] {
            let names: BTreeSet<&str> =
                routes[side].difference(&routes[other]).flat_map(|(name, route)| names_in(name, route)).collect();
            for &number in &close {
                if names.iter().any(|name| self.list[number].words[side].contains(*name)) {
                    found.insert(number);
                }
            }
        }
        found
    }
}

/// What a reference may call a document, or an item of a list in it.
fn names_in<'r>(name: &'r Name, route: &Route<'r>) -> impl Iterator<Item = &'r str> {
    let items = route.iter().filter_map(|step| match step {
        Step::Named(name) => Some(*name),
        Step::Key(_) | Step::Index(_) => None,
    });
    std::iter::once(name.1.as_str()).chain(items)
}

struct Differences<'i, 'f> {
    sides: &'i [Index<'f>; 2],
    list: Vec<Edit<'f>>,
}

/// A node of each side; `None` where it is not there.
type Two = [Option<NodeId>; 2];

impl<'f> Differences<'_, 'f> {
    fn documents(&mut self, name: &Name, ids: [DocumentId; 2]) {
        let [Some(before), Some(after)] = [0, 1].map(|side| self.sides[side].document(ids[side])) else { return };
        let roots = [before.root(), after.root()].map(Some);
        self.nodes(name, ids, &[before, after], roots, &Vec::new());
    }

    /// The survey file of a hop, shown by its first line that differs.
    fn surveys(&mut self, name: &Name, ids: [DocumentId; 2]) {
        let [Some((_, before)), Some((file, after))] = [0, 1].map(|side| self.sides[side].survey(ids[side])) else {
            return;
        };
        let Some((line, both)) = first_difference(before, after) else { return };
        let [before, after] = both.map(|text| text.map(shortened));
        let path = self.sides[1].files.get(file).map(|source| source.path.clone()).unwrap_or_default();
        let cause = Cause {
            class: Class::Design,
            document: format!("{} {}", name.0, name.1),
            route: spelled(SURVEY),
            before,
            after,
            path,
            line,
            gone: false,
        };
        self.list.push(Edit { name: name.clone(), route: SURVEY.to_vec(), words: Default::default(), cause });
    }

    fn nodes(&mut self, name: &Name, ids: [DocumentId; 2], trees: &[&'f Document; 2], nodes: Two, route: &Route<'f>) {
        let solid = [0, 1].map(|side| nodes[side].map(|node| trees[side].resolve(node)));
        let kind = |side: usize| solid[side].map(|node| &trees[side].node(node).kind);
        let below = |step: Step<'f>| route.iter().copied().chain([step]).collect::<Route<'f>>();
        match (kind(0), kind(1)) {
            (Some(NodeKind::Mapping(_)), Some(NodeKind::Mapping(_))) => {
                for key in keys(trees, solid) {
                    let values = [0, 1].map(|side| Some(trees[side].get(solid[side]?, key)?.1));
                    self.nodes(name, ids, trees, values, &below(Step::Key(key)));
                }
            }
            (Some(NodeKind::Sequence(before)), Some(NodeKind::Sequence(after))) => {
                for (step, items) in paired(trees, before, after) {
                    self.nodes(name, ids, trees, items, &below(step));
                }
            }
            (None, None) => {}
            _ => {
                let value = |side: usize| solid[side].map(|node| to_value(trees[side], node));
                if value(0) != value(1) {
                    self.edit(name, ids, trees, nodes, route);
                }
            }
        }
    }

    fn edit(&mut self, name: &Name, ids: [DocumentId; 2], trees: &[&'f Document; 2], nodes: Two, route: &Route<'f>) {
        let side = usize::from(nodes[1].is_some());
        let Some(node) = nodes[side] else { return };
        let at = self.sides[side].place(ids[side].file, trees[side].node(node).span.start);
        let (path, line) = at.unwrap_or_default();
        let written = |side: usize| nodes[side].map(|node| shortened(&flow(trees[side], node)));
        let words = [0, 1].map(|side| {
            let mut words = BTreeSet::new();
            nodes[side].into_iter().for_each(|node| gather(trees[side], node, &mut words));
            words
        });
        let cause = Cause {
            class: Class::of(&name.0),
            document: format!("{} {}", name.0, name.1),
            route: spelled(route.iter().copied()),
            before: written(0),
            after: written(1),
            path,
            line,
            gone: side == 0,
        };
        self.list.push(Edit { name: name.clone(), route: route.clone(), words, cause });
    }
}

/// The keys of both mappings, those of the new one first.
fn keys<'f>(trees: &[&'f Document; 2], nodes: Two) -> Vec<&'f str> {
    let mut keys: Vec<&str> = Vec::new();
    for side in [1, 0] {
        let Some(node) = nodes[side] else { continue };
        for (key, _) in trees[side].entries(node) {
            let word = trees[side].text(key).unwrap_or_default();
            if !keys.contains(&word) {
                keys.push(word);
            }
        }
    }
    keys
}

/// The items of two lists side by side: by their ids where all have one, else by number.
fn paired<'f>(trees: &[&'f Document; 2], before: &[NodeId], after: &[NodeId]) -> Vec<(Step<'f>, Two)> {
    let ids = |side: usize, items: &[NodeId]| -> Option<Vec<&'f str>> {
        items.iter().map(|item| id_of(trees[side], *item)).collect()
    };
    if let (Some(old), Some(new)) = (ids(0, before), ids(1, after)) {
        let gone = old.iter().filter(|id| !new.contains(id));
        let find =
            |ids: &[&str], items: &[NodeId], id: &str| ids.iter().position(|known| *known == id).map(|at| items[at]);
        return new
            .iter()
            .chain(gone)
            .map(|id| (Step::Named(id), [find(&old, before, id), find(&new, after, id)]))
            .collect();
    }
    let most = before.len().max(after.len());
    let pair = |number: usize| [before.get(number).copied(), after.get(number).copied()];
    (0..most).map(|number| (Step::Index(number), pair(number))).collect()
}

fn gather(document: &Document, node: NodeId, words: &mut BTreeSet<String>) {
    if let Some(text) = document.text(node) {
        words.insert(text.to_owned());
    }
    document.entries(node).for_each(|(_, value)| gather(document, value, words));
    document.items(node).for_each(|item| gather(document, item, words));
}

/// A value on one line.
fn flow(document: &Document, node: NodeId) -> String {
    match &document.node(document.resolve(node)).kind {
        NodeKind::Scalar { text, .. } => text.split_whitespace().collect::<Vec<_>>().join(" "),
        NodeKind::Sequence(items) => {
            format!("[{}]", items.iter().map(|item| flow(document, *item)).collect::<Vec<_>>().join(", "))
        }
        NodeKind::Mapping(entries) => {
            let entry =
                |(key, value): &(NodeId, NodeId)| format!("{}: {}", flow(document, *key), flow(document, *value));
            format!("{{ {} }}", entries.iter().map(entry).collect::<Vec<_>>().join(", "))
        }
        NodeKind::Alias { .. } => String::new(),
    }
}

fn shortened(text: &str) -> String {
    let clean = |c: char| if c.is_control() { char::REPLACEMENT_CHARACTER } else { c };
    let mut short: String = text.chars().take(LONGEST).map(clean).collect();
    if text.chars().nth(LONGEST).is_some() {
        short.push('…');
    }
    short
}
