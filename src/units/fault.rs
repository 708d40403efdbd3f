//! Why a text is not the quantity it should be.

use std::ops::Range;

/// Why a text is not the quantity it should be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// The part of the text at fault, in bytes.
    pub span: Range<usize>,
    /// What is wrong: one lower-case clause.
    pub reason: String,
    /// How to fix it.
    pub help: String,
    /// Whether it is a quantity, and one that cannot be.
    pub out_of_range: bool,
    /// The unit that was meant, where that is certain and `span` is its odd spelling.
    pub unit: Option<&'static str>,
}
