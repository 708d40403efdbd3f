//! Writing: cells in, a text out that no spreadsheet runs.

use super::Marks;

/// A cell to write.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Out {
    /// Text of people: made inert.
    Text(String),
    /// A number with a point, as it stands; its point becomes the mark of the table. It is never made inert, for a quote
    /// before -0.02 would make a text of it.
    Number(String),
    /// Nothing.
    Empty,
}

impl Out {
    /// Text, or nothing where there is none.
    #[must_use]
    pub fn text(text: Option<impl ToString>) -> Self {
        text.map_or(Self::Empty, |text| Self::Text(text.to_string()))
    }

    /// A number, or nothing where there is none.
    #[must_use]
    pub fn number(number: Option<String>) -> Self {
        number.map_or(Self::Empty, Self::Number)
    }
}

/// Whether a spreadsheet would take a text for something to compute.
fn runs(text: &str) -> bool {
    text.starts_with(['=', '+', '-', '@', '\t', '\r', '\n', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}'])
}

/// A text that no spreadsheet computes: an apostrophe stands before what it would. So does one before apostrophes that stand
/// before such a text, or they would be taken off when it is read back.
#[must_use]
pub fn inert(text: &str) -> String {
    if runs(text.trim_start_matches('\'')) { format!("'{text}") } else { text.to_owned() }
}

/// The text that [`inert`] was given.
#[must_use]
pub fn undone(cell: &str) -> &str {
    match cell.strip_prefix('\'') {
        Some(text) if runs(text.trim_start_matches('\'')) => text,
        _ => cell,
    }
}

/// Writes a table row by row, lines ended as RFC 4180 ends them.
#[derive(Debug)]
pub struct Writer {
    marks: Marks,
    out: String,
}

impl Writer {
    /// An empty table.
    #[must_use]
    pub const fn new(marks: Marks) -> Self {
        Self { marks, out: String::new() }
    }

    /// Adds a row.
    pub fn row(&mut self, cells: impl IntoIterator<Item = Out>) {
        for (number, cell) in cells.into_iter().enumerate() {
            if number > 0 {
                self.out.push(self.marks.separator);
            }
            match cell {
                Out::Text(text) => self.put(&inert(&text)),
                Out::Number(number) => {
                    let mark = self.marks.decimal.unwrap_or('.');
                    self.put(&number.replace('.', mark.encode_utf8(&mut [0; 4])));
                }
                Out::Empty => {}
            }
        }
        self.out.push_str("\r\n");
    }

    fn put(&mut self, text: &str) {
        let odd = |c: char| c == self.marks.separator || matches!(c, '"' | '\n' | '\r');
        if text.contains(odd) || text.starts_with([' ', '\t', '#', '\u{feff}']) || text.ends_with([' ', '\t']) {
            self.out.push('"');
            self.out.push_str(&text.replace('"', "\"\""));
            self.out.push('"');
        } else {
            self.out.push_str(text);
        }
    }

    /// What has been written.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.out
    }
}
