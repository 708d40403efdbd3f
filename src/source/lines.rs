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

/// How many bytes lie between two places whose UTF-16 units are counted beforehand: a file may be one long line.
const BLOCK: usize = 1024;

/// Where each line of a text begins, without the text: made once, then any offset can be asked for.
#[derive(Debug, Clone)]
pub struct LineTable {
    starts: Vec<usize>,
    /// UTF-16 units before each block.
    units: Vec<usize>,
}

impl LineTable {
    /// Looks through `text` for its line breaks: LF, CRLF, or a CR alone, as in YAML.
    ///
    /// A byte-order mark at the very start belongs to no column, for editors do not show it.
    #[must_use]
    pub fn new(text: &str) -> Self {
        let bytes = text.as_bytes();
        let first = if text.starts_with('\u{feff}') { '\u{feff}'.len_utf8() } else { 0 };
        let breaks = bytes
            .iter()
            .enumerate()
            .filter(|&(at, &byte)| byte == b'\n' || (byte == b'\r' && bytes.get(at + 1) != Some(&b'\n')));
        let starts = std::iter::once(first).chain(breaks.map(|(at, _)| at + 1)).collect();
        let (mut units, mut count, mut from) = (Vec::with_capacity(bytes.len() / BLOCK + 1), 0, 0);
        for block in (0..=bytes.len()).step_by(BLOCK).map(|at| text.floor_char_boundary(at)) {
            count += utf16(&text[from..block]);
            from = block;
            units.push(count);
        }
        Self { starts, units }
    }

    /// The line and column of a byte offset in the text it was made of.
    ///
    /// An offset inside a character means that character; one past the end means the end.
    #[must_use]
    pub fn position(&self, text: &str, byte: usize) -> Position {
        let byte = text.floor_char_boundary(byte);
        let line = self.starts.partition_point(|&start| start <= byte).max(1);
        let start = self.starts[line - 1];
        Position { line, column: self.units_before(text, byte).saturating_sub(self.units_before(text, start)) + 1 }
    }

    fn units_before(&self, text: &str, byte: usize) -> usize {
        let block = (byte / BLOCK).min(self.units.len() - 1);
        let from = text.floor_char_boundary(block * BLOCK);
        self.units[block] + utf16(text.get(from..byte).unwrap_or_default())
    }
}

/// UTF-16 code units of a text: one for each character, two for those beyond the first plane, which have four bytes.
fn utf16(text: &str) -> usize {
    text.bytes().map(|byte| usize::from(byte & 0xC0 != 0x80) + usize::from(byte >= 0xF0)).sum()
}

/// A text with its table.
#[derive(Debug, Clone)]
pub struct LineIndex<'t> {
    text: &'t str,
    table: LineTable,
}

impl<'t> LineIndex<'t> {
    /// Looks through `text` once; see [`LineTable::new`].
    #[must_use]
    pub fn new(text: &'t str) -> Self {
        Self { text, table: LineTable::new(text) }
    }

    /// The line and column of a byte offset; see [`LineTable::position`].
    #[must_use]
    pub fn position(&self, byte: usize) -> Position {
        self.table.position(self.text, byte)
    }
}

#[cfg(test)]
mod tests {
    use super::{LineIndex, Position};

    #[test]
    fn a_column_counts_from_the_start_of_its_line_however_long() {
        let text = format!("\u{feff}é𝄞\r\n{}\n", "a𝄞é".repeat(1000));
        let lines = LineIndex::new(&text);
        let mut wanted = Position { line: 1, column: 1 };
        for (at, c) in text.char_indices().skip(1) {
            assert_eq!(lines.position(at), wanted, "byte {at}");
            wanted.column += c.len_utf16();
            if c == '\n' {
                wanted = Position { line: wanted.line + 1, column: 1 };
            }
        }
        assert_eq!(lines.position(text.len() + 7), wanted);
    }
}
