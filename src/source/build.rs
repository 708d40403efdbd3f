//! From text to span trees.
//!
//! Text comes in; documents and faults go out. The parser hands over one event after another, and
//! the builder keeps the open collections on a stack of its own, so that no input can exhaust
//! ours. A document that breaks off is dropped and reading goes on at the next one. Aliases are
//! never expanded: each node knows what it would weigh if they were.

mod keys;

use std::collections::BTreeMap;

use granit_parser::{Event, Parser, ScalarStyle, Span as Mark, StructureStyle, options};

use super::marks;
use super::tree::{Document, MAX_DEPTH, MAX_NODES, Node, NodeId, NodeKind, Parsed, Span, Style, Tag, TreeFault};
use super::wording;
use crate::text::nearest::nearest;

/// The number of faults after which a file is not read further.
pub const MAX_FAULTS: usize = 200;

/// The anchors that are looked at to explain an unknown alias.
const MAX_SUGGESTIONS: usize = 1000;

/// What a node takes of a text, about: so many are made room for, of the beginning of a long text.
const BYTES_A_NODE: usize = 10;
const LONG: usize = 1 << 16;

/// Reads all documents of a text.
#[must_use]
pub fn parse(text: &str) -> Parsed {
    let mut parser = Parser::new_from_str_with_options(
        text,
        options! {
            emit_comments: false,
            emit_anchor_events: true,
            emit_unresolved_aliases: true,
        },
    );
    let mut builder = Builder { text, ..Builder::default() };
    builder.nodes.reserve(text.len().min(LONG) / BYTES_A_NODE);
    builder.extents.reserve(text.len().min(LONG) / BYTES_A_NODE);

    while let Some(next) = parser.next_event() {
        let step = match next {
            Ok((event, mark)) => builder.event(event, &mark),
            Err(error) => {
                builder.faults.push(wording::syntax(text, &error));
                Err(Stop::Document)
            }
        };
        let more = match step {
            Ok(()) => true,
            Err(Stop::Document) => {
                builder.abandon();
                parser.proceed_next_document().unwrap_or(false)
            }
            Err(Stop::File) => false,
        };
        if !more || builder.faults.len() >= MAX_FAULTS {
            break;
        }
    }
    builder.parsed()
}

/// How much has to be given up after a fault.
enum Stop {
    Document,
    File,
}

#[derive(Default)]
struct Builder<'t> {
    text: &'t str,
    documents: Vec<Document>,
    faults: Vec<TreeFault>,
    /// The nodes of the document being read.
    nodes: Vec<Node>,
    /// What each of `nodes` comes to, once it is complete.
    extents: Vec<Extent>,
    /// The collections not yet closed, outermost first.
    open: Vec<Frame>,
    /// The anchors of the document, by the parser's number.
    anchors: BTreeMap<usize, Anchor>,
    /// Nodes in the file so far, aliases expanded.
    weight: usize,
    /// Where the last scalar, alias or bracket ended.
    end: usize,
}

/// The size of a node with its aliases expanded.
#[derive(Clone, Copy, Default)]
struct Extent {
    weight: usize,
    height: usize,
}

struct Anchor {
    node: NodeId,
    name: String,
}

/// A collection being read.
struct Frame {
    id: NodeId,
    children: Children,
    height: usize,
    weight_before: usize,
}

enum Children {
    Sequence(Vec<NodeId>),
    Mapping { entries: Vec<(NodeId, NodeId)>, key: Option<NodeId> },
}

impl Builder<'_> {
    fn event(&mut self, event: Event<'_>, mark: &Mark) -> Result<(), Stop> {
        let span = marks::span(self.text, mark);
        match event {
            Event::Scalar(text, style, _, tag) => {
                let tag = self.scalar_tag(tag.as_deref(), mark);
                self.scalar(&text, written_style(style), tag, span)
            }
            Event::SequenceStart(style, _, tag) => {
                self.check_collection_tag(tag.as_deref(), "seq", mark);
                let is_value_list = style == StructureStyle::Block && self.awaits_value();
                let span = if is_value_list { marks::value_list(self.text, span) } else { span };
                self.open(Children::Sequence(Vec::new()), span)
            }
            Event::MappingStart(_, _, tag) => {
                self.check_collection_tag(tag.as_deref(), "map", mark);
                self.open(Children::Mapping { entries: Vec::new(), key: None }, span)
            }
            Event::SequenceEnd | Event::MappingEnd => {
                self.close(&span);
                Ok(())
            }
            Event::Anchor(number, name) => {
                self.anchor(number, name.into_owned(), span);
                Ok(())
            }
            Event::Alias(number) => self.alias(number, span),
            Event::UnresolvedAlias(name) => self.unknown_alias(&name, span),
            Event::DocumentEnd => {
                self.finish();
                Ok(())
            }
            _ => Ok(()),
        }
    }

    /// Whether the next node is the value of a key.
    fn awaits_value(&self) -> bool {
        let children = self.open.last().map(|frame| &frame.children);
        matches!(children, Some(Children::Mapping { key: Some(_), .. }))
    }
}

// Nodes.
impl Builder<'_> {
    fn scalar(&mut self, text: &str, style: Style, tag: Option<Tag>, span: Span) -> Result<(), Stop> {
        let (text, span) = match style {
            Style::Block => (text, marks::block_scalar(self.text, self.end, &span)),
            // The parser says `~` for what is not written.
            Style::Plain if span.is_empty() && self.awaits_value() => ("", marks::unwritten_value(self.text, span)),
            Style::Plain if span.is_empty() => ("", span),
            _ => (text, span),
        };
        let weight = 1 + text.len() / 256;
        self.weigh(weight, &span)?;
        self.end = span.end;
        let id = self.push(NodeKind::Scalar { text: text.into(), style, tag }, span);
        self.complete(id, Extent { weight, height: 0 });
        Ok(())
    }

    fn open(&mut self, children: Children, span: Span) -> Result<(), Stop> {
        self.check_depth(1, &span)?;
        let weight_before = self.weight;
        self.weigh(1, &span)?;
        self.end = span.end;
        // Its real content follows when it is closed.
        let id = self.push(NodeKind::Sequence(Vec::new()), span);
        self.open.push(Frame { id, children, height: 0, weight_before });
        Ok(())
    }

    /// Ends the innermost collection: at its bracket, or else where its last child ends.
    fn close(&mut self, bracket: &Span) {
        let Some(frame) = self.open.pop() else { return };
        if !bracket.is_empty() {
            self.end = bracket.end;
        }
        let kind = match frame.children {
            Children::Sequence(items) => NodeKind::Sequence(items),
            Children::Mapping { entries, .. } => NodeKind::Mapping(self.sound_entries(entries)),
        };
        let node = &mut self.nodes[frame.id.0];
        node.span.end = self.end.max(node.span.start);
        node.kind = kind;
        let weight = self.weight - frame.weight_before;
        self.complete(frame.id, Extent { weight, height: frame.height + 1 });
    }

    fn anchor(&mut self, number: usize, name: String, span: Span) {
        // The event follows that of its node at once.
        let Some(node) = self.nodes.last_mut() else {
            return;
        };
        node.anchor = Some(span);
        let node = NodeId(self.nodes.len() - 1);
        self.anchors.insert(number, Anchor { node, name });
    }

    fn alias(&mut self, number: usize, span: Span) -> Result<(), Stop> {
        let Some(anchor) = self.anchors.get(&number) else {
            return self.unknown_alias("", span);
        };
        let target = anchor.node;
        if self.open.iter().any(|frame| frame.id == target) {
            let anchor = self.nodes[target.0].anchor.clone();
            self.faults.push(wording::recursive_alias(span.clone(), anchor));
            return self.scalar("", Style::Plain, None, span);
        }

        let extent = self.extents[target.0];
        self.check_depth(extent.height, &span)?;
        self.weigh(extent.weight, &span)?;
        self.end = span.end;
        let id = self.push(NodeKind::Alias { target }, span);
        self.complete(id, extent);
        Ok(())
    }

    fn unknown_alias(&mut self, name: &str, span: Span) -> Result<(), Stop> {
        let recent = || self.anchors.values().rev().take(MAX_SUGGESTIONS);
        let near = nearest(name, recent().map(|anchor| anchor.name.as_str()))
            .and_then(|near| recent().find(|anchor| anchor.name == near))
            .map(|anchor| (anchor.name.as_str(), self.nodes[anchor.node.0].anchor.clone()));
        self.faults.push(wording::unknown_alias(span.clone(), name, near));
        self.scalar("", Style::Plain, None, span)
    }

    fn push(&mut self, kind: NodeKind, span: Span) -> NodeId {
        self.nodes.push(Node { span, anchor: None, kind });
        self.extents.push(Extent::default());
        NodeId(self.nodes.len() - 1)
    }

    /// Hands a complete node to the collection around it.
    fn complete(&mut self, id: NodeId, extent: Extent) {
        self.extents[id.0] = extent;
        let Some(frame) = self.open.last_mut() else {
            return;
        };
        frame.height = frame.height.max(extent.height);
        match &mut frame.children {
            Children::Sequence(items) => items.push(id),
            Children::Mapping { entries, key } => match key.take() {
                Some(key) => entries.push((key, id)),
                None => *key = Some(id),
            },
        }
    }

    fn check_depth(&mut self, height: usize, span: &Span) -> Result<(), Stop> {
        if self.open.len() + height <= MAX_DEPTH {
            return Ok(());
        }
        self.faults.push(wording::too_deep(span.clone()));
        Err(Stop::Document)
    }

    fn weigh(&mut self, weight: usize, span: &Span) -> Result<(), Stop> {
        self.weight = self.weight.saturating_add(weight);
        if self.weight <= MAX_NODES {
            return Ok(());
        }
        self.faults.push(wording::too_many_nodes(span.clone()));
        Err(Stop::File)
    }
}

// Documents.
impl Builder<'_> {
    fn finish(&mut self) {
        let nodes = std::mem::take(&mut self.nodes);
        let written = |root: &Node| !root.span.is_empty() || root.anchor.is_some();
        if nodes.first().is_some_and(written) {
            self.documents.push(Document { nodes });
        }
        self.forget();
    }

    /// Gives up the document being read, after a last look at the keys it got to.
    fn abandon(&mut self) {
        while let Some(frame) = self.open.pop() {
            if let Children::Mapping { entries, .. } = frame.children {
                self.sound_entries(entries);
            }
        }
        self.nodes.clear();
        self.forget();
    }

    fn forget(&mut self) {
        self.extents.clear();
        self.anchors.clear();
    }

    fn parsed(self) -> Parsed {
        let mut faults = self.faults;
        for fault in &mut faults {
            if fault.span.is_empty() {
                fault.span = wording::visible(self.text, fault.span.start);
            }
        }
        faults.sort_by_key(|fault| fault.span.start);
        faults.truncate(MAX_FAULTS);
        Parsed { documents: self.documents, faults }
    }
}

fn written_style(style: ScalarStyle) -> Style {
    match style {
        ScalarStyle::Plain => Style::Plain,
        ScalarStyle::SingleQuoted | ScalarStyle::DoubleQuoted => Style::Quoted,
        ScalarStyle::Literal | ScalarStyle::Folded => Style::Block,
    }
}
