//! Grafts: values that stand elsewhere, put in where a document writes none.
//!
//! What is taken in keeps the bytes it was written at. It is copied into the nodes of the document, so whoever walks the tree
//! need not know of it; [`Grafted::origins`] says of what is taken where it stands.

use std::collections::HashMap;

use super::tree::{Document, Node, NodeId, NodeKind, Style};

/// The most nodes that a document takes in, aliases expanded: of a short text no huge one is made.
const MOST_TAKEN: usize = 20_000;

/// Where something that was taken in stands.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Origin {
    /// The number of the document it is taken from, as its layer says.
    pub giver: usize,
    /// The route there.
    pub route: String,
}

/// A mapping whose values count where those before it have none.
#[derive(Debug, Clone)]
pub struct Layer<'g> {
    /// The number of its document.
    pub giver: usize,
    /// Its document.
    pub tree: &'g Document,
    /// The value there.
    pub node: NodeId,
    /// The route to it.
    pub route: String,
    /// A key of it that does not count; empty for none.
    pub except: &'static str,
}

impl<'g> Layer<'g> {
    /// The value of a key of it.
    #[must_use]
    pub fn below(&self, key: &str) -> Option<Self> {
        let (_, node) = self.tree.get(self.node, key).filter(|_| key != self.except)?;
        let dot = if self.route.is_empty() { "" } else { "." };
        let route = format!("{}{dot}{key}", self.route);
        Some(Self { node: self.tree.resolve(node), route, except: "", ..self.clone() })
    }

    /// An item of it.
    #[must_use]
    pub fn item(&self, index: usize) -> Option<Self> {
        let node = self.tree.resolve(self.tree.item(self.node, index)?);
        Some(Self { node, route: format!("{}[{index}]", self.route), except: "", ..self.clone() })
    }

    /// The whole of a document.
    #[must_use]
    pub fn whole(giver: usize, tree: &'g Document) -> Self {
        Self { giver, tree, node: tree.root(), route: String::new(), except: "" }
    }

    fn kind(&self) -> &'g NodeKind {
        &self.tree.node(self.node).kind
    }

    fn is_mapping(&self) -> bool {
        matches!(self.kind(), NodeKind::Mapping(_))
    }
}

/// A document while values are put in.
#[derive(Debug)]
pub struct Graft {
    document: Document,
    origins: HashMap<NodeId, Origin>,
    /// What was copied, and how many nodes it is with its aliases expanded.
    copied: HashMap<(usize, NodeId), (NodeId, usize)>,
    taken: usize,
}

/// A document with what it takes in.
#[derive(Debug)]
pub struct Grafted {
    /// The document.
    pub document: Document,
    /// Where the values stand that are not its own, by the outermost node of each.
    pub origins: HashMap<NodeId, Origin>,
}

impl Graft {
    /// Sets out with a document.
    #[must_use]
    pub fn of(document: &Document) -> Self {
        Self { document: document.clone(), origins: HashMap::new(), copied: HashMap::new(), taken: 0 }
    }

    /// The document as it is by now.
    #[must_use]
    pub const fn tree(&self) -> &Document {
        &self.document
    }

    /// The document with another root. Nothing if nothing was taken in, an error if it is too much.
    ///
    /// # Errors
    /// How many nodes a document may take in.
    pub fn rooted(mut self, root: NodeId) -> Result<Option<Grafted>, usize> {
        if self.taken > MOST_TAKEN {
            return Err(MOST_TAKEN);
        }
        if self.origins.is_empty() {
            return Ok(None);
        }
        self.document.nodes[0] = self.document.nodes[root.0].clone();
        Ok(Some(Grafted { document: self.document, origins: self.origins }))
    }

    /// A value with all that it does not write taken from the layers, the first of them first. Mappings are filled key by key;
    /// anything else counts as it is written.
    pub fn merged(&mut self, own: Option<NodeId>, layers: &[Layer<'_>]) -> Option<NodeId> {
        if layers.is_empty() {
            return own;
        }
        let Some(own) = own else { return Some(self.take(layers)) };
        let solid = self.document.resolve(own);
        let NodeKind::Mapping(entries) = &self.document.node(solid).kind else { return Some(own) };
        let before = entries.clone();
        let after = self.entries(before.clone(), layers);
        Some(if after == before { own } else { self.instead(own, NodeKind::Mapping(after)) })
    }

    /// A mapping with another value under a key, which it need not have.
    pub fn put(&mut self, mapping: NodeId, key: &str, value: NodeId) -> NodeId {
        let solid = self.document.resolve(mapping);
        let NodeKind::Mapping(entries) = &self.document.node(solid).kind else { return mapping };
        let mut entries = entries.clone();
        match entries.iter().position(|(name, _)| self.document.text(*name) == Some(key)) {
            Some(at) if entries[at].1 == value => return mapping,
            Some(at) => entries[at].1 = value,
            None => {
                let span = self.document.node(value).span.clone();
                let kind = NodeKind::Scalar { text: key.into(), style: Style::Plain, tag: None };
                let name = self.push(Node { span: span.start..span.start, anchor: None, kind });
                entries.push((name, value));
            }
        }
        self.instead(mapping, NodeKind::Mapping(entries))
    }

    /// A list with other items.
    pub fn with_items(&mut self, list: NodeId, items: Vec<NodeId>) -> NodeId {
        if self.document.items(list).eq(items.iter().copied()) {
            return list;
        }
        self.instead(list, NodeKind::Sequence(items))
    }

    /// The values of a layer, filled from those after it. They come from elsewhere, each of them.
    pub fn take(&mut self, layers: &[Layer<'_>]) -> NodeId {
        let first = &layers[0];
        let maps: Vec<Layer<'_>> = layers.iter().filter(|layer| layer.is_mapping()).cloned().collect();
        let value = if first.is_mapping() && (maps.len() > 1 || !first.except.is_empty()) {
            let entries = self.entries(Vec::new(), &maps);
            let span = first.tree.node(first.node).span.clone();
            self.push(Node { span, anchor: None, kind: NodeKind::Mapping(entries) })
        } else {
            self.copy(first.giver, first.tree, first.node).0
        };
        self.origins.insert(value, Origin { giver: first.giver, route: first.route.clone() });
        value
    }

    fn entries(&mut self, mut own: Vec<(NodeId, NodeId)>, layers: &[Layer<'_>]) -> Vec<(NodeId, NodeId)> {
        for (key, value) in &mut own {
            let word = self.document.text(*key).unwrap_or_default().to_owned();
            let below: Vec<Layer<'_>> = layers.iter().filter_map(|layer| layer.below(&word)).collect();
            *value = self.merged(Some(*value), &below).unwrap_or(*value);
        }
        for (number, layer) in layers.iter().enumerate() {
            for (key, _) in layer.tree.entries(layer.node) {
                let Some(word) = layer.tree.text(key) else { continue };
                if word == layer.except || own.iter().any(|(name, _)| self.document.text(*name) == Some(word)) {
                    continue;
                }
                let below: Vec<Layer<'_>> = layers[number..].iter().filter_map(|layer| layer.below(word)).collect();
                let name = self.copy(layer.giver, layer.tree, key).0;
                let value = self.take(&below);
                own.push((name, value));
            }
        }
        own
    }

    /// A node in place of another one, with its place.
    fn instead(&mut self, old: NodeId, kind: NodeKind) -> NodeId {
        let span = self.document.node(self.document.resolve(old)).span.clone();
        let new = self.push(Node { span, anchor: None, kind });
        if let Some(origin) = self.origins.get(&old).cloned() {
            self.origins.insert(new, origin);
        }
        new
    }

    fn copy(&mut self, giver: usize, tree: &Document, node: NodeId) -> (NodeId, usize) {
        let node = tree.resolve(node);
        if let Some(known) = self.copied.get(&(giver, node)) {
            self.taken = self.taken.saturating_add(known.1);
            return *known;
        }
        let before = self.taken;
        self.taken = self.taken.saturating_add(1);
        let kind = match &tree.node(node).kind {
            // Too much already: what comes of it is not looked at.
            _ if self.taken > MOST_TAKEN => NodeKind::Sequence(Vec::new()),
            NodeKind::Mapping(entries) => {
                let copy = |(key, value): &(NodeId, NodeId)| {
                    (self.copy(giver, tree, *key).0, self.copy(giver, tree, *value).0)
                };
                NodeKind::Mapping(entries.iter().map(copy).collect())
            }
            NodeKind::Sequence(items) => {
                NodeKind::Sequence(items.iter().map(|item| self.copy(giver, tree, *item).0).collect())
            }
            kind => kind.clone(),
        };
        let copy = self.push(Node { span: tree.node(node).span.clone(), anchor: None, kind });
        let made = (copy, self.taken - before);
        self.copied.insert((giver, node), made);
        made
    }

    fn push(&mut self, node: Node) -> NodeId {
        self.document.nodes.push(node);
        NodeId(self.document.nodes.len() - 1)
    }
}

#[cfg(test)]
mod tests {
    use super::{Graft, Layer};
    use crate::source::{Document, parse, to_value};

    fn document(text: &str) -> Document {
        parse(text).documents.remove(0)
    }

    fn merged(own: &str, layers: &[&str]) -> (String, Vec<String>) {
        let (own, trees) = (document(own), layers.iter().map(|text| document(text)).collect::<Vec<_>>());
        let layers: Vec<Layer<'_>> = trees.iter().enumerate().map(|(giver, tree)| Layer::whole(giver, tree)).collect();
        let mut graft = Graft::of(&own);
        let root = graft.merged(Some(own.root()), &layers).expect("its own root");
        let grafted = graft.rooted(root).expect("little").expect("something was taken");
        let value = to_value(&grafted.document, grafted.document.root());
        let mut origins: Vec<String> =
            grafted.origins.values().map(|origin| format!("{} {}", origin.giver, origin.route)).collect();
        origins.sort();
        (serde_json::to_string(&value).expect("plain"), origins)
    }

    #[test]
    fn keys_are_filled_through_mappings_and_lists_and_scalars_count_as_written() {
        let (value, origins) = merged(
            "{a: 1, m: {x: 1}, l: [1]}",
            &["{a: 2, m: {y: 2}, l: [2, 3], n: {k: [4]}}", "{m: {x: 9, z: 3}, n: {j: 5}, s: 6}"],
        );
        assert_eq!(value, r#"{"a":1,"m":{"x":1,"y":2,"z":3},"l":[1],"n":{"k":[4],"j":5},"s":6}"#);
        assert_eq!(origins, ["0 m.y", "0 n", "0 n.k", "1 m.z", "1 n.j", "1 s"]);
    }

    #[test]
    fn what_an_alias_repeats_is_filled_where_it_is_used_only() {
        let own = document("{a: &it {x: 1}, b: *it}");
        let giver = document("{y: 2}");
        let mut graft = Graft::of(&own);
        let (_, b) = own.get(own.root(), "b").expect("b");
        let layer = Layer::whole(0, &giver);
        let filled = graft.merged(Some(b), &[layer]).expect("b");
        let root = graft.put(own.root(), "b", filled);
        let grafted = graft.rooted(root).expect("little").expect("something");
        let value = to_value(&grafted.document, grafted.document.root());
        assert_eq!(serde_json::to_string(&value).expect("plain"), r#"{"a":{"x":1},"b":{"x":1,"y":2}}"#);
    }

    #[test]
    fn of_a_short_text_no_huge_one_is_made() {
        let many = format!("{{x: &x [{}], y: [{}]}}", "1, ".repeat(300), "*x, ".repeat(200));
        let (own, giver) = (document("{}"), document(&many));
        let mut graft = Graft::of(&own);
        let layer = Layer::whole(0, &giver);
        let root = graft.merged(Some(own.root()), &[layer]).expect("a root");
        assert!(graft.rooted(root).is_err());
    }
}
