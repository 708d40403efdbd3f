//! What is written differently in two documents of one name, field by field.

use std::collections::BTreeSet;

use super::cause::{Cause, Class};
use super::index::{Index, Route, id_of};
use super::outline::{Name, SURVEY};
use super::survey::first_difference;
use crate::place::{DocumentId, Step, route::spelled};
use crate::source::{Document, NodeId, NodeKind, to_value};

/// A field that is written differently.
pub(super) struct Edit<'f> {
    pub name: Name,
    pub route: Route<'f>,
    /// Every word in what was written, and in what is.
    pub words: [BTreeSet<String>; 2],
    pub cause: Cause,
}

/// The longest text of a field that a cause repeats in full, in characters.
const LONGEST: usize = 60;

/// Gathers the edits of documents.
pub(super) struct Differences<'i, 'f> {
    pub sides: &'i [Index<'f>; 2],
    pub list: Vec<Edit<'f>>,
}

/// A node of each side; `None` where it is not there.
type Two = [Option<NodeId>; 2];

impl<'f> Differences<'_, 'f> {
    pub(super) fn documents(&mut self, name: &Name, ids: [DocumentId; 2]) {
        let [Some(before), Some(after)] = [0, 1].map(|side| self.sides[side].document(ids[side])) else { return };
        let roots = [before.root(), after.root()].map(Some);
        self.nodes(name, ids, &[before, after], roots, &Vec::new());
    }

    /// The survey file of a hop, shown by its first line that differs.
    pub(super) fn surveys(&mut self, name: &Name, ids: [DocumentId; 2]) {
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

    /// A document that only one side has, shown by its id.
    pub(super) fn alone(&mut self, side: usize, name: &Name, id: DocumentId) {
        let Some(document) = self.sides[side].document(id) else { return };
        let Some((_, node)) = document.get(document.root(), "id") else { return };
        let (path, line) = self.sides[side].place(id.file, document.node(node).span.start).unwrap_or_default();
        let written = |on: usize| (on == side).then(|| shortened(&flow(document, node)));
        let cause = Cause {
            class: Class::of(&name.0),
            document: format!("{} {}", name.0, name.1),
            route: "id".into(),
            before: written(0),
            after: written(1),
            path,
            line,
            gone: side == 0,
        };
        // All of it is new or gone, whatever is reached in it.
        self.list.push(Edit { name: name.clone(), route: Route::new(), words: Default::default(), cause });
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
