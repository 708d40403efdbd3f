//! Reading: a text in, rows out, each cell with its bytes.

use std::borrow::Cow;
use std::ops::Range;

use super::{Fault, Marks, called};

/// A row of a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row<'t> {
    /// The line it starts in, from 1.
    pub line: usize,
    /// Its bytes, without the end of the line.
    pub span: Range<usize>,
    /// Its cells.
    pub cells: Vec<Cell<'t>>,
}

/// A cell of a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cell<'t> {
    /// Its bytes, blanks and quotes around them aside.
    pub span: Range<usize>,
    /// What stands in it: as it is between quotes, without the blanks around it where there are none.
    pub text: Cow<'t, str>,
}

/// Reads a table row by row. Empty lines are passed over. After a fault nothing more is read: where a quote is missing, no
/// row behind it is where it seems to be.
#[derive(Debug)]
pub struct Reader<'t> {
    text: &'t str,
    marks: Marks,
    at: usize,
    line: usize,
    /// Whether lines that start with `#` are remarks.
    remarks: bool,
    broken: bool,
}

impl<'t> Reader<'t> {
    /// Reads a text; a byte-order mark before it is passed over.
    #[must_use]
    pub fn new(text: &'t str, marks: Marks) -> Self {
        let at = text.len() - text.trim_start_matches('\u{feff}').len();
        Self { text, marks, at, line: 1, remarks: false, broken: false }
    }

    /// Says whether lines that start with `#` are remarks from here on.
    pub fn take_remarks(&mut self, remarks: bool) {
        self.remarks = remarks;
    }

    /// The first line with something on it, remarks aside.
    #[must_use]
    pub fn first_line(text: &'t str) -> &'t str {
        let lines = text.trim_start_matches('\u{feff}').lines();
        lines.map(str::trim).find(|line| !line.is_empty() && !line.starts_with('#')).unwrap_or_default()
    }

    fn rest(&self) -> &'t str {
        &self.text[self.at..]
    }

    /// Passes over lines without a row.
    fn skip(&mut self) {
        loop {
            let line = self.rest().split_inclusive('\n').next().unwrap_or_default();
            let bare = if self.marks.separator == '\t' { line.trim_matches([' ', '\r', '\n']) } else { line.trim() };
            if line.is_empty() || !(bare.is_empty() || (self.remarks && bare.starts_with('#'))) {
                return;
            }
            self.at += line.len();
            self.line += 1;
        }
    }

    /// Takes what stands between the next separator or end of the line, and says whether the row goes on.
    fn cell(&mut self) -> Result<(Cell<'t>, bool), Fault> {
        let blank = |c: char| c == ' ' || (c == '\t' && self.marks.separator != '\t');
        let lead = self.rest().len() - self.rest().trim_start_matches(blank).len();
        if self.rest()[lead..].starts_with('"') {
            self.at += lead;
            return self.quoted();
        }
        let end = self.rest().find([self.marks.separator, '\n', '"']).unwrap_or(self.rest().len());
        if self.rest()[end..].starts_with('"') {
            let (span, separator) = (self.at + end..self.at + end + 1, called(self.marks.separator));
            let message = format!(
                "a quote stands in the midst of a cell: put the whole cell between quotes, and write \"\" for one of its \
                 own; cells are separated by a {separator}"
            );
            return Err(Fault { span, message });
        }
        let raw = &self.rest()[..end];
        let inner = raw.trim_end_matches('\r').trim_matches(blank);
        let from = self.at + raw.find(inner).unwrap_or_default();
        let cell = Cell { span: from..from + inner.len(), text: Cow::Borrowed(inner) };
        self.at += end;
        Ok((cell, self.close()))
    }

    /// A cell that starts with a quote.
    fn quoted(&mut self) -> Result<(Cell<'t>, bool), Fault> {
        let start = self.at;
        let mut at = start + 1;
        let end = loop {
            let Some(quote) = self.text[at..].find('"').map(|found| at + found) else {
                let message = "a quote is opened here and never closed".to_owned();
                return Err(Fault { span: start..self.text.len(), message });
            };
            if !self.text[quote + 1..].starts_with('"') {
                break quote;
            }
            at = quote + 2;
        };
        let inner = &self.text[start + 1..end];
        self.line += inner.matches('\n').count();
        let text = if inner.contains('"') { Cow::Owned(inner.replace("\"\"", "\"")) } else { Cow::Borrowed(inner) };
        let blanks: &[char] = if self.marks.separator == '\t' { &[' '] } else { &[' ', '\t'] };
        let behind = &self.text[end + 1..];
        let skipped = behind.len() - behind.trim_start_matches(blanks).len();
        self.at = end + 1 + skipped;
        let next = self.rest().trim_start_matches('\r').chars().next();
        if let Some(odd) = next.filter(|c| *c != '\n' && *c != self.marks.separator) {
            let message = format!("`{}` stands behind the closing quote of a cell", odd.escape_default());
            return Err(Fault { span: self.at..self.at + odd.len_utf8(), message });
        }
        Ok((Cell { span: start + 1..end, text }, self.close()))
    }

    /// Steps over a separator, or stays at the end of a line.
    fn close(&mut self) -> bool {
        if self.rest().starts_with(self.marks.separator) {
            self.at += self.marks.separator.len_utf8();
            return true;
        }
        false
    }

    fn row(&mut self) -> Result<Row<'t>, Fault> {
        let (line, start) = (self.line, self.at);
        let mut cells = Vec::new();
        loop {
            let (cell, goes_on) = self.cell()?;
            cells.push(cell);
            if !goes_on {
                break;
            }
        }
        let end = start + self.text[start..self.at].trim_end_matches('\r').len();
        if let Some(rest) = self.rest().strip_prefix('\r') {
            self.at = self.text.len() - rest.len();
        }
        if self.rest().starts_with('\n') {
            self.at += 1;
        }
        self.line += 1;
        Ok(Row { line, span: start..end, cells })
    }
}

impl<'t> Iterator for Reader<'t> {
    type Item = Result<Row<'t>, Fault>;

    fn next(&mut self) -> Option<Self::Item> {
        if self.broken {
            return None;
        }
        self.skip();
        if self.rest().is_empty() {
            return None;
        }
        let row = self.row();
        self.broken = row.is_err();
        Some(row)
    }
}

/// A cell as a plain decimal number with a point, its digits kept.
///
/// # Errors
/// It is none, or could be more than one: a clause that says what it could be.
pub fn number(cell: &str, decimal: Option<char>) -> Result<String, String> {
    let text = cell.trim();
    let (sign, digits) = match text.chars().next() {
        Some('-' | '\u{2212}') => ("-", text.trim_start_matches(['-', '\u{2212}'])),
        Some('+') => ("", &text[1..]),
        _ => ("", text),
    };
    let none = || "is not a number: digits, and a mark before decimals, are all that may stand here".to_owned();
    if text.chars().filter(|c| !c.is_ascii_digit() && !matches!(c, '.' | ',')).count() > usize::from(text != digits) {
        return Err(none());
    }
    let parts: Vec<&str> = digits.split(['.', ',']).collect();
    if parts.iter().any(|part| part.is_empty()) {
        return Err(none());
    }
    let [whole, decimals] = parts.as_slice() else {
        return match parts.as_slice() {
            [whole] => Ok(format!("{sign}{whole}")),
            _ => Err("has marks between thousands: write it without them".into()),
        };
    };
    let mark = if digits.contains('.') { '.' } else { ',' };
    if decimal == Some(mark) {
        return Ok(format!("{sign}{whole}.{decimals}"));
    }
    if decimals.len() == 3 {
        return Err(format!(
            "could be {sign}{whole}.{decimals} or {sign}{whole}{decimals}: say which mark stands before decimals"
        ));
    }
    Err(match decimal {
        Some(decimal) => format!("has a {}, and the decimal mark here is a {}", called(mark), called(decimal)),
        None => format!("has a {}: say which mark stands before decimals", called(mark)),
    })
}
