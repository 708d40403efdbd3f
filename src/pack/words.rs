//! The small shapes the views are made of.

use serde::Serialize;

use crate::voice::{Voice, shown};

/// Something named and its value.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Fact {
    pub label: String,
    pub value: String,
}

/// A table: a header row and rows of as many cells.
#[derive(Debug, Clone, Default, Serialize)]
pub(super) struct Table {
    pub head: Vec<String>,
    pub rows: Vec<Vec<String>>,
    /// The row that is set heavier, if one is.
    pub heavy: Option<usize>,
    /// Rows that say that something is outside its tolerance.
    pub broken: Vec<usize>,
}

impl Table {
    /// An empty table; its header row by the keys of the catalogue.
    pub(super) fn new<const N: usize>(voice: Voice, head: [&str; N]) -> Self {
        Self { head: head.map(|key| voice.say(key)).to_vec(), ..Self::default() }
    }

    pub(super) fn row<const N: usize>(&mut self, cells: [String; N]) {
        self.rows.push(cells.into());
    }
}

/// A fact as an author wrote it.
pub(super) fn fact(label: String, value: impl std::fmt::Display) -> Fact {
    Fact { label, value: shown(&value.to_string()) }
}

/// What an author wrote, or what is said where nothing was.
pub(super) fn text_or<T: std::fmt::Display>(text: Option<T>, otherwise: String) -> String {
    text.map_or(otherwise, |text| shown(&text.to_string()))
}

/// The first letter made a capital.
pub(super) fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
