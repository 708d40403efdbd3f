//! Files, their text, and the places in it.
//!
//! A path comes in; what goes out is a tree of YAML nodes that know their byte ranges, and the
//! faults met on the way. Nothing here knows what a hop is. [`discover`] finds and reads files,
//! [`parse`] turns text into [`Document`]s, [`typed`] hands one to serde, and [`LineIndex`]
//! turns bytes into lines and columns. No input makes any of them panic, hang or use unbounded
//! memory; the limits are constants beside what they protect.

mod build;
mod discover;
mod graft;
mod lines;
mod marks;
mod mends;
mod passed_over;
mod read;
mod tree;
mod typed;
mod value;
mod wording;

pub use build::{MAX_FAULTS, parse};
pub use discover::{Discovery, MAX_ENTRIES, MAX_FOLDERS, discover, is_yaml};
pub use graft::{Graft, Grafted, Layer, Origin};
pub use lines::{LineIndex, LineTable, Position};
pub use mends::Mends;
pub use passed_over::{PassedOver, passes_over, patterns};
pub use read::{FileFault, FileFaultKind, MAX_BYTES, SourceText, read};
pub use tree::{
    Document, Found, MAX_DEPTH, MAX_NODES, Node, NodeId, NodeKind, Parsed, Span, Style, Tag, TreeFault, TreeFaultKind,
};
pub use typed::{Untyped, typed};
pub use value::{Core, ambiguous, core_type, to_value};
