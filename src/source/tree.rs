//! The span tree: what a YAML text says, and where it says it.
//!
//! `build` makes it from the text; the rest of the crate walks it by routes of keys and indices.
//! A [`Document`] holds its nodes in one list and names them by [`NodeId`]. Whatever a
//! [`TreeFault`] complains about is left out, so that the tree itself is always sound: keys are
//! scalars and unique, aliases lead to something outside themselves, nesting is limited.

use std::ops::Range;

use crate::place::Step;

/// The most collections that may stand inside one another, aliases expanded.
pub const MAX_DEPTH: usize = 64;

/// The most nodes in a file, aliases expanded. Long text counts once for each 256 bytes.
pub const MAX_NODES: usize = 100_000;

/// A range of bytes in the file, on character boundaries; a byte-order mark counts.
pub type Span = Range<usize>;

/// What a text was found to hold.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Parsed {
    /// The documents that could be read to their end, in order; empty ones are passed over.
    pub documents: Vec<Document>,
    /// What is wrong, in order of place.
    pub faults: Vec<TreeFault>,
}

/// Something in a text that this crate does not take as YAML.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TreeFault {
    /// What sort of fault it is.
    pub kind: TreeFaultKind,
    /// Where it is.
    pub span: Span,
    /// A second place that explains it, such as the first of two equal keys.
    pub other: Option<Span>,
    /// What is wrong, as one lower-case clause.
    pub message: String,
    /// What to do about it, if that can be said.
    pub help: Option<String>,
}

impl TreeFault {
    pub(super) fn new(kind: TreeFaultKind, span: Span, message: impl Into<String>) -> Self {
        Self { kind, span, other: None, message: message.into(), help: None }
    }

    pub(super) fn because(self, other: Option<Span>) -> Self {
        Self { other, ..self }
    }

    pub(super) fn help(self, help: impl Into<String>) -> Self {
        Self { help: Some(help.into()), ..self }
    }
}

/// The sorts of faults in a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TreeFaultKind {
    /// The text breaks the grammar of YAML; the rest of its document was not read.
    Malformed,
    /// A key stands twice in one mapping; the first one counts.
    DuplicateKey,
    /// A `<<` key, which YAML 1.2 does not know.
    MergeKey,
    /// A key that is a list or a mapping.
    ComplexKey,
    /// An alias whose anchor does not come before it; null in the tree.
    UnknownAlias,
    /// An alias inside the value it repeats; null in the tree.
    RecursiveAlias,
    /// A tag from outside the core schema, or one that does not fit its value; passed over.
    ForeignTag,
    /// More nesting than is taken; the rest of its document was not read.
    TooDeep,
    /// More nodes than are taken; the rest of the file was not read.
    TooManyNodes,
}

impl TreeFaultKind {
    /// Whether the document was not read to its end, and so is not among the documents.
    #[must_use]
    pub const fn ends_document(self) -> bool {
        matches!(self, Self::Malformed | Self::TooDeep | Self::TooManyNodes)
    }
}

/// Names a node within the document that gave the name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NodeId(pub(super) usize);

/// A scalar, a collection or an alias, with its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Node {
    /// The content, without anchor and tag. Empty for a value that is not written at all.
    pub span: Span,
    /// The `&name` before the content.
    pub anchor: Option<Span>,
    /// What the node is.
    pub kind: NodeKind,
}

/// The kinds of nodes.
#[derive(Debug, Clone, PartialEq)]
pub enum NodeKind {
    /// A piece of text, which may yet turn out to be a number.
    Scalar {
        /// The content after escapes and folding; empty for a value that is not written.
        text: Box<str>,
        /// How it is written.
        style: Style,
        /// Its explicit tag.
        tag: Option<Tag>,
    },
    /// A list.
    Sequence(Vec<NodeId>),
    /// Keys, which are scalars or aliases of scalars, and their values, in order.
    Mapping(Vec<(NodeId, NodeId)>),
    /// A repetition of an earlier node.
    Alias {
        /// The node repeated, never itself an alias.
        target: NodeId,
    },
}

/// How a scalar is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Style {
    /// Without quotes: the only style in which text can be a number.
    Plain,
    /// In single or double quotes.
    Quoted,
    /// Under a `|` or `>`.
    Block,
}

/// An explicit tag on a scalar. Those for collections add nothing and are not kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Tag {
    /// `!!str`
    Str,
    /// `!!int`
    Int,
    /// `!!float`
    Float,
    /// `!!bool`
    Bool,
    /// `!!null`
    Null,
}

/// One document of a file.
#[derive(Debug, Clone, PartialEq)]
pub struct Document {
    /// Never empty; the root comes first.
    pub(super) nodes: Vec<Node>,
}

/// The end of a route, or as near to it as the document goes.
///
/// A route that passes an alias stays, for [`span`](Self::span) and [`key`](Self::key), where the
/// alias is used; [`definition`](Self::definition) goes on to what is meant.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found {
    /// The value; if the route breaks off, the key it broke off under. Instead of a whole
    /// document, its first key.
    pub span: Span,
    /// The key whose value this is; `None` for list items and the root.
    pub key: Option<Span>,
    /// The same end of the route, where the first alias on the way is defined.
    pub definition: Option<Span>,
    /// Whether the document goes all the way.
    pub complete: bool,
}

/// A node and the key that led to it.
#[derive(Clone, Copy)]
struct Spot {
    node: NodeId,
    key: Option<NodeId>,
}

impl Spot {
    const fn item(node: NodeId) -> Self {
        Self { node, key: None }
    }
}

/// The keys an item of a list may be known by; without any it is known by its number.
const NAMES: [&str; 4] = ["id", "title", "name", "port"];

impl Document {
    /// The outermost node.
    #[must_use]
    pub fn root(&self) -> NodeId {
        NodeId(0)
    }

    /// The node of that name, which must come from this document.
    #[must_use]
    pub fn node(&self, id: NodeId) -> &Node {
        &self.nodes[id.0]
    }

    /// The node meant: for an alias what it repeats, for any other the node itself.
    #[must_use]
    pub fn resolve(&self, id: NodeId) -> NodeId {
        match self.node(id).kind {
            NodeKind::Alias { target } => target,
            _ => id,
        }
    }

    /// The text of a scalar, through aliases; `None` for a collection.
    #[must_use]
    pub fn text(&self, id: NodeId) -> Option<&str> {
        match &self.node(self.resolve(id)).kind {
            NodeKind::Scalar { text, .. } => Some(text),
            _ => None,
        }
    }

    /// The keys and values of a mapping, through aliases; nothing for other nodes.
    pub fn entries(&self, id: NodeId) -> impl Iterator<Item = (NodeId, NodeId)> {
        let entries = match &self.node(self.resolve(id)).kind {
            NodeKind::Mapping(entries) => entries.as_slice(),
            _ => &[],
        };
        entries.iter().copied()
    }

    /// The items of a list, through aliases; nothing for other nodes.
    pub fn items(&self, id: NodeId) -> impl Iterator<Item = NodeId> {
        let items = match &self.node(self.resolve(id)).kind {
            NodeKind::Sequence(items) => items.as_slice(),
            _ => &[],
        };
        items.iter().copied()
    }

    /// A key of a mapping and its value, through aliases.
    #[must_use]
    pub fn get(&self, id: NodeId, key: &str) -> Option<(NodeId, NodeId)> {
        self.entries(id).find(|&(name, _)| self.text(name) == Some(key))
    }

    /// An item of a list, through aliases.
    #[must_use]
    pub fn item(&self, id: NodeId, index: usize) -> Option<NodeId> {
        self.items(id).nth(index)
    }

    /// What an item of a list is known by, if it has a name.
    #[must_use]
    pub fn name(&self, item: NodeId) -> Option<&str> {
        let named = |key: &&str| self.text(self.get(item, key)?.1).filter(|text| !text.is_empty());
        NAMES.iter().find_map(named)
    }

    /// The same route with the names of items in place of their numbers, where they have one.
    #[must_use]
    pub fn by_name<'s, 'p: 's>(&'s self, steps: impl IntoIterator<Item = Step<'p>>) -> Vec<Step<'s>> {
        let mut at = Some(self.root());
        let step = |step| {
            at = at.and_then(|node| self.step(node, step)).map(|spot| spot.node);
            match step {
                Step::Index(_) => at.and_then(|item| self.name(item)).map_or(step, Step::Named),
                _ => step,
            }
        };
        steps.into_iter().map(step).collect()
    }

    /// Follows a route from the root as far as it goes.
    #[must_use]
    pub fn find(&self, steps: &[Step<'_>]) -> Found {
        let mut end = Spot { node: self.root(), key: None };
        let mut used = None;
        let mut complete = true;
        for &step in steps {
            let Some(next) = self.step(end.node, step) else {
                complete = false;
                break;
            };
            end = next;
            if self.is_alias(end.node) {
                used = used.or(Some(end));
                end.node = self.resolve(end.node);
            }
        }

        let shown = used.unwrap_or(end);
        Found {
            span: self.shown(shown, complete),
            key: shown.key.map(|key| self.span(key)),
            definition: used.map(|alias| {
                // The key before an alias belongs to its use.
                let key = end.key.filter(|_| end.key != alias.key);
                self.shown(Spot { key, ..end }, complete)
            }),
            complete,
        }
    }

    fn step(&self, from: NodeId, step: Step<'_>) -> Option<Spot> {
        match step {
            Step::Key(key) => self.get(from, key).map(|(key, node)| Spot { node, key: Some(key) }),
            Step::Index(index) => self.item(from, index).map(Spot::item),
            Step::Named(name) => self.items(from).find(|item| self.name(*item) == Some(name)).map(Spot::item),
        }
    }

    /// What to underline: the value at the end of a route, or a key where the route breaks off.
    fn shown(&self, Spot { node, key }: Spot, complete: bool) -> Span {
        let first_key = || self.entries(node).next().map(|(key, _)| key);
        let instead = if node == self.root() {
            first_key()
        } else if complete {
            None
        } else if self.is_alias(node) {
            key
        } else {
            key.or_else(first_key)
        };
        self.span(instead.unwrap_or(node))
    }

    fn span(&self, id: NodeId) -> Span {
        self.node(id).span.clone()
    }

    fn is_alias(&self, id: NodeId) -> bool {
        matches!(self.node(id).kind, NodeKind::Alias { .. })
    }
}
