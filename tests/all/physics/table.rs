//! Reading `tests/tables/*.csv`: `#` lines that say where the numbers come from, a header, then the rows.
//!
//! With `DIFFERENCES` set, every comparison is printed: place in the tests, column, difference, relative difference.

use std::panic::Location;

/// One row, which knows its line and its columns by name.
pub struct Row {
    line: usize,
    cells: Vec<(&'static str, &'static str)>,
}

/// The rows of a table.
pub fn rows(table: &'static str) -> impl Iterator<Item = Row> {
    let mut lines = table.lines().zip(1..).filter(|(text, _)| !text.starts_with('#'));
    let (header, _) = lines.next().expect("a header");
    lines.map(move |(text, line)| Row { line, cells: header.split(',').zip(text.split(',')).collect() })
}

impl Row {
    /// The words of a cell.
    pub fn text(&self, column: &str) -> &'static str {
        let cell = self.cells.iter().find(|(name, _)| *name == column);
        cell.unwrap_or_else(|| panic!("no column `{column}`")).1
    }

    /// The number in a cell, none if the cell is empty.
    pub fn maybe(&self, column: &str) -> Option<f64> {
        let text = self.text(column);
        let number = || text.parse().unwrap_or_else(|_| panic!("line {}: `{text}` is no number", self.line));
        (!text.is_empty()).then(number)
    }

    /// The number in a cell.
    pub fn number(&self, column: &str) -> f64 {
        self.maybe(column).unwrap_or_else(|| panic!("line {}: `{column}` is empty", self.line))
    }

    /// Asserts that a result is the number of a column, to within a tolerance in the unit of the column.
    #[track_caller]
    pub fn check(&self, column: &str, got: f64, tolerance: f64) {
        let (line, expected) = (self.line, self.number(column));
        if std::env::var_os("DIFFERENCES").is_some() {
            let (from, apart) = (Location::caller(), (got - expected).abs());
            let share = if expected == 0.0 { 0.0 } else { apart / expected.abs() };
            println!("difference {}:{} {column} {apart:e} {share:e}", from.file(), from.line());
        }
        assert!((got - expected).abs() <= tolerance, "line {line}: got {got}, `{column}` has {expected}");
    }

    /// Asserts that a result is the number of a column, to one part in a million.
    #[track_caller]
    pub fn check_relative(&self, column: &str, got: f64) {
        self.check(column, got, 1e-6 * self.number(column).abs());
    }
}
