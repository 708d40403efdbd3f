//! From byte offsets to lines and columns.
//!
//! Inside the crate a place is a byte range; people and editors want lines and columns. A text
//! comes in once, and then any offset can be asked for: one binary search for the line and a
//! walk along it for the column. Columns count UTF-16 code units, as editors do by default.

/// A place as editors count it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Position {
    /// The line, from 1.
    pub line: usize,
    /// The column, from 1, in UTF-16 code units: an emoji counts two.
    pub column: usize,
}

/// Where each line of a text begins.
#[derive(Debug, Clone)]
pub struct LineIndex<'t> {
    text: &'t str,
    starts: Vec<usize>,
}

impl<'t> LineIndex<'t> {
    /// Looks through `text` for its line breaks: LF, CRLF, or a CR alone, as in YAML.
    ///
    /// A byte-order mark at the very start belongs to no column, for editors do not show it.
    #[must_use]
    pub fn new(text: &'t str) -> Self {
        let bytes = text.as_bytes();
        let first = if text.starts_with('\u{feff}') { '\u{feff}'.len_utf8() } else { 0 };
        let breaks = bytes
            .iter()
            .enumerate()
            .filter(|&(at, &byte)| byte == b'\n' || (byte == b'\r' && bytes.get(at + 1) != Some(&b'\n')));
        let starts = std::iter::once(first).chain(breaks.map(|(at, _)| at + 1)).collect();
        Self { text, starts }
    }

    /// The line and column of a byte offset.
    ///
    /// An offset inside a character means that character; one past the end means the end.
    #[must_use]
    pub fn position(&self, byte: usize) -> Position {
        let byte = self.text.floor_char_boundary(byte);
        let line = self.starts.partition_point(|&start| start <= byte).max(1);
        let before = self.text.get(self.starts[line - 1]..byte).unwrap_or_default();
        Position { line, column: before.encode_utf16().count() + 1 }
    }
}
