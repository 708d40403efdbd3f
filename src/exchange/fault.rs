//! What keeps a file from being imported, at its row, column and value.

use std::fmt;

use crate::text::plain::spelled;

/// Something that cannot be taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// The file, as it is printed.
    pub file: String,
    /// Its line, from 1; 0 where it is about the whole file.
    pub line: usize,
    /// The column, as the header has it, or what it is in a file of waypoints.
    pub column: Option<String>,
    /// What stands there.
    pub value: Option<String>,
    /// What is wrong with it: a lower-case clause.
    pub why: String,
}

impl Fault {
    /// About a whole file.
    #[must_use]
    pub fn of_file(file: &str, why: impl Into<String>) -> Self {
        Self { file: file.to_owned(), line: 0, column: None, value: None, why: why.into() }
    }

    /// About a line of it.
    #[must_use]
    pub fn at(file: &str, line: usize, why: impl Into<String>) -> Self {
        Self { line, ..Self::of_file(file, why) }
    }

    /// About a value of a line.
    #[must_use]
    pub fn of(file: &str, line: usize, column: &str, value: &str, why: impl Into<String>) -> Self {
        let (column, value) = (Some(column.to_owned()), Some(value.to_owned()));
        Self { column, value, ..Self::at(file, line, why) }
    }
}

/// The longest value that is repeated in full, in characters.
const LONGEST: usize = 60;

/// A value as it is repeated: on one line, and no longer than that.
pub(super) fn told(value: &str) -> String {
    let short: String = value.chars().take(LONGEST).collect();
    let more = if short.len() < value.len() { "…" } else { "" };
    format!("{}{more}", spelled(&short))
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", spelled(&self.file))?;
        if self.line > 0 {
            write!(f, ":{}", self.line)?;
        }
        f.write_str(": ")?;
        if let Some(column) = &self.column {
            write!(f, "column `{}`: ", told(column))?;
        }
        match &self.value {
            Some(value) if value.is_empty() => write!(f, "the empty cell {}", self.why),
            Some(value) => write!(f, "`{}` {}", told(value), self.why),
            None => f.write_str(&self.why),
        }
    }
}
