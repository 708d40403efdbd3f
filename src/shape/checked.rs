//! What a shape check finds out, apart from how.

use std::ops::Range;

use crate::finding::Finding;
use crate::place::FileId;
use crate::source::{Mends, Origin};
use crate::spec::Kind;

/// The most faults of a document, and of a file, that are listed: nobody fixes so many by hand.
pub const MOST_FAULTS: usize = 1000;

/// What came of a shape check.
#[derive(Debug, Default)]
pub struct Checked<'d> {
    /// Every fault.
    pub findings: Vec<Finding>,
    /// The documents it refers to, for a document that cannot be typed even with its holes filled.
    pub mentions: Vec<Mention>,
    /// What is to be left out or filled in so that the rest can be typed and judged.
    pub mends: Mends<'d>,
    /// The values that are broken or missing: nothing that depends on them may be judged.
    pub holes: Vec<Hole>,
    /// What it takes in from elsewhere.
    pub taken: Vec<TakenIn>,
}

/// A value that a document takes in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TakenIn {
    /// Its route in the document.
    pub at: String,
    /// Where it stands.
    pub origin: Origin,
}

/// A broken or missing value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hole {
    /// Its route: `ends.a.height`.
    pub route: String,
    /// The same as a message names it: where it stands in its document.
    pub named: String,
    /// Where the fault is shown: a value that is taken in may stand in another file.
    pub file: FileId,
    /// The bytes there.
    pub at: Range<usize>,
}

/// A reference as it stands in the text.
#[derive(Debug)]
pub struct Mention {
    /// The kind of document it must lead to.
    pub kind: Kind,
    /// The id.
    pub id: String,
    /// Where it is written.
    pub file: FileId,
    /// The bytes there.
    pub span: Range<usize>,
    /// Whether it stands in what others take in, which is followed only there.
    pub is_part: bool,
}
