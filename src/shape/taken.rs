//! Values that a document takes in from elsewhere, as the walk meets them.

use std::collections::HashMap;
use std::ops::Range;
use std::sync::Arc;

use crate::place::DocumentId;
use crate::place::route::lies_in;
use crate::source::{NodeId, Origin};

/// What a document takes in.
#[derive(Debug, Clone, Copy)]
pub struct Taken<'a> {
    /// The document itself.
    pub document: DocumentId,
    /// Where the values stand that are not its own, by the outermost node of each.
    pub origins: &'a HashMap<NodeId, Origin>,
    /// The documents they stand in.
    pub givers: &'a [Giver],
    /// Routes below which keys may be missing because what should be taken in there cannot be read.
    pub unsure: &'a [String],
}

/// A document that others take values from.
#[derive(Debug, Clone)]
pub struct Giver {
    /// File and number.
    pub document: DocumentId,
    /// The text of its file.
    pub text: Arc<str>,
    /// Keys whose value cannot be trusted.
    pub doubtful: Vec<Range<usize>>,
}

impl Taken<'_> {
    /// The document that the value of a node is taken from; none if it is where it belongs.
    pub(super) fn giver(&self, id: NodeId) -> Option<&Giver> {
        self.givers.get(self.origins.get(&id)?.giver)
    }

    /// Whether what is missing at a route may only be unreadable.
    pub(super) fn is_unsure(&self, route: &str) -> bool {
        self.unsure.iter().any(|unsure| lies_in(route, unsure))
    }
}
