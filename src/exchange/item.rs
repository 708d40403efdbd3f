//! What was read of one row or waypoint.

use super::columns::Column;

/// A site or a hop as a file has it.
#[derive(Debug, Clone)]
pub struct Item {
    /// Its id.
    pub id: String,
    /// The file, as it is printed.
    pub file: String,
    /// Its line, from 1.
    pub line: usize,
    /// What is said of it, in the order of the columns; what is empty is not said.
    pub values: Vec<Value>,
    /// What could not be taken, to be told and to stand in a new document.
    pub remarks: Vec<String>,
}

/// One value.
#[derive(Debug, Clone)]
pub struct Value {
    /// What it is.
    pub column: &'static Column,
    /// The column as the file calls it.
    pub header: String,
    /// As the file has it.
    pub cell: String,
    /// As the language has it, not yet quoted.
    pub words: String,
}

impl Item {
    /// The value of a column.
    #[must_use]
    pub fn value(&self, column: &str) -> Option<&Value> {
        self.values.iter().find(|value| value.column.name == column)
    }
}
