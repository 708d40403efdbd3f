//! The walk: tree beside shape, in a document and in what it takes in.

use std::ops::Range;

use super::{Checked, Giver, Shape, Taken, TakenIn};
use crate::place::route::spelled;
use crate::place::{FileId, Step};
use crate::source::{Document, NodeId, NodeKind, Origin, Style};
use crate::spec::Kind;

/// Holds a document against its shape. Every fault becomes a finding in `file`.
///
/// `doubtful` are keys whose value cannot be trusted for another reason, such as a second key of the same name.
#[must_use]
pub fn check<'d>(
    document: &'d Document,
    text: &'d str,
    file: FileId,
    kind: Kind,
    doubtful: &'d [Range<usize>],
) -> Checked<'d> {
    Walk::new(document, text, file, doubtful, Mode::Whole).run(kind)
}

/// The same for a document that takes in what it does not write: what it may take in need not be there.
#[must_use]
pub fn check_written<'d>(
    document: &'d Document,
    text: &'d str,
    file: FileId,
    kind: Kind,
    doubtful: &'d [Range<usize>],
) -> Checked<'d> {
    Walk::new(document, text, file, doubtful, Mode::Written).run(kind)
}

/// Holds a document with all that it takes in against its shape. Only what is still missing becomes a finding: the rest has
/// been said where it is written.
#[must_use]
pub fn check_completed<'d>(
    document: &'d Document,
    text: &'d str,
    kind: Kind,
    doubtful: &'d [Range<usize>],
    taken: Taken<'d>,
) -> Checked<'d> {
    let walk = Walk::new(document, text, taken.document.file, doubtful, Mode::Completed);
    Walk { taken: Some(taken), ..walk }.run(kind)
}

/// What is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Mode {
    /// A document that takes in nothing: all of it.
    Whole,
    /// One that does, as it is written.
    Written,
    /// The same with what it takes in.
    Completed,
}

pub(super) struct Walk<'a> {
    pub(super) document: &'a Document,
    pub(super) text: &'a str,
    pub(super) file: FileId,
    pub(super) kind: Kind,
    pub(super) doubtful: &'a [Range<usize>],
    /// Keys and indices on the way.
    pub(super) route: Vec<Step<'a>>,
    /// Aliases on the way: a fault inside one is shown at its outermost use.
    pub(super) uses: Vec<Range<usize>>,
    /// Faults met so far; one that is used twice is reported once but counts twice.
    pub(super) faults: usize,
    pub(super) mode: Mode,
    /// How many parts that others take in are on the way.
    pub(super) parts: usize,
    pub(super) taken: Option<Taken<'a>>,
    /// Where what is being walked stands in truth, and how long the route to it is.
    pub(super) marks: Vec<(usize, &'a Origin)>,
    /// The last key on the way that the document writes itself.
    pub(super) own_key: Range<usize>,
    pub(super) done: Checked<'a>,
}

impl<'a> Walk<'a> {
    fn new(document: &'a Document, text: &'a str, file: FileId, doubtful: &'a [Range<usize>], mode: Mode) -> Self {
        Self {
            document,
            text,
            file,
            kind: Kind::Network,
            doubtful,
            route: Vec::new(),
            uses: Vec::new(),
            faults: 0,
            mode,
            parts: 0,
            taken: None,
            marks: Vec::new(),
            own_key: 0..0,
            done: Checked::default(),
        }
    }

    fn run(mut self, kind: Kind) -> Checked<'a> {
        self.kind = kind;
        self.node(self.document.root(), Shape::of(kind), None);
        self.done
    }

    pub(super) fn node(&mut self, id: NodeId, shape: &'a Shape, key: Option<&Range<usize>>) {
        let origin = self.taken.and_then(|taken| Some((taken, taken.origins.get(&id)?)));
        if let Some((taken, origin)) = origin
            && let Some(giver) = taken.givers.get(origin.giver)
        {
            return self.taken_in(id, shape, key, origin, giver);
        }
        let own_key = self.own_key.clone();
        if self.mode == Mode::Completed && self.marks.is_empty() {
            self.own_key = key.cloned().unwrap_or_else(|| self.head(self.document.resolve(id)));
        }
        self.value(id, shape, key);
        self.own_key = own_key;
    }

    /// What stands in another document, or elsewhere in this one.
    fn taken_in(
        &mut self,
        id: NodeId,
        shape: &'a Shape,
        key: Option<&Range<usize>>,
        origin: &'a Origin,
        giver: &'a Giver,
    ) {
        self.done.taken.push(TakenIn { at: spelled(self.route.iter().copied()), origin: origin.clone() });
        let before = (self.file, self.text, self.doubtful, std::mem::take(&mut self.uses));
        (self.file, self.text, self.doubtful) = (giver.document.file, &giver.text, &giver.doubtful);
        self.marks.push((self.route.len(), origin));
        self.value(id, shape, key);
        self.marks.pop();
        (self.file, self.text, self.doubtful, self.uses) = before;
    }

    /// Whether what is being walked stands in another document.
    pub(super) fn is_foreign(&self) -> bool {
        let Some(taken) = self.taken else { return false };
        let giver = self.marks.last().and_then(|(_, origin)| taken.givers.get(origin.giver));
        giver.is_some_and(|giver| giver.document != taken.document)
    }

    fn value(&mut self, id: NodeId, shape: &'a Shape, key: Option<&Range<usize>>) {
        if let NodeKind::Alias { target } = self.document.node(id).kind {
            self.uses.push(self.document.node(id).span.clone());
            self.node(target, shape, key);
            self.uses.pop();
            return;
        }
        match (&self.document.node(id).kind, shape) {
            (_, Shape::Part(part)) => {
                self.parts += 1;
                self.value(id, part, key);
                self.parts -= 1;
            }
            (NodeKind::Mapping(_), Shape::Map(fields)) => self.map(id, fields, key),
            (NodeKind::Mapping(_), Shape::Table(value)) => {
                for &(name, value_id) in self.entries(id) {
                    self.route.push(Step::Key(self.word(name)));
                    self.node(value_id, value, Some(&self.document.node(name).span));
                    self.route.pop();
                }
            }
            (NodeKind::Sequence(items), Shape::List(item)) => {
                for (index, &id) in items.iter().enumerate() {
                    self.route.push(Step::Index(index));
                    self.node(id, item, None);
                    self.route.pop();
                }
            }
            (NodeKind::Scalar { text, style, .. }, Shape::Map(_) | Shape::Table(_) | Shape::List(_)) => {
                let empty = text.is_empty() && *style == Style::Plain;
                self.wrong_form(id, shape, key, empty);
            }
            (NodeKind::Scalar { text, style, .. }, _) => self.scalar(id, text, *style, shape, key),
            _ => self.wrong_form(id, shape, key, false),
        }
    }

    /// The first line of a node: a label over a whole mapping would hide the file.
    pub(super) fn head(&self, id: NodeId) -> Range<usize> {
        let node = self.document.node(id);
        match &node.kind {
            NodeKind::Mapping(entries) => entries.first().map(|(key, _)| self.document.node(*key).span.clone()),
            NodeKind::Sequence(items) => items.first().map(|item| self.head(self.document.resolve(*item))),
            _ => None,
        }
        .unwrap_or_else(|| node.span.clone())
    }

    pub(super) fn entries(&self, id: NodeId) -> &'a [(NodeId, NodeId)] {
        match &self.document.node(id).kind {
            NodeKind::Mapping(entries) => entries,
            _ => &[],
        }
    }

    pub(super) fn word(&self, key: NodeId) -> &'a str {
        match &self.document.node(key).kind {
            NodeKind::Scalar { text, .. } => text,
            _ => "",
        }
    }
}
