//! How a line of the sheet or an author's value is spelled on a page, and the small shapes the views are made of.

use serde::Serialize;

use crate::sheet::{Line, Shown};
use crate::units::Quantity;

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
}

impl Table {
    pub(super) fn new<const N: usize>(head: [&str; N]) -> Self {
        Self { head: head.map(str::to_owned).to_vec(), ..Self::default() }
    }

    pub(super) fn row<const N: usize>(&mut self, cells: [String; N]) {
        self.rows.push(cells.into());
    }
}

pub(super) fn fact(label: &str, value: impl std::fmt::Display) -> Fact {
    Fact { label: label.into(), value: shown(&value.to_string()) }
}

/// A line as a page prints it, or why it has no value.
pub(super) fn say<T: Shown>(line: &Line<T>) -> String {
    match &line.value {
        Ok(value) => shown(&value.text()),
        Err(missing) => format!("— ({})", missing.reason),
    }
}

/// Two lines as a band, the smaller number first.
pub(super) fn band<Q: Quantity>(one: &Line<Q>, other: &Line<Q>) -> String {
    let (one, other) = if one.get() > other.get() { (other, one) } else { (one, other) };
    format!("{} to {}", say(one), say(other))
}

/// A computed length in both systems.
pub(super) fn say_in_both<Q: crate::units::TwoSystems>(line: &Line<Q>) -> String {
    match &line.value {
        Ok(value) => shown(&crate::units::in_both(*value)),
        Err(missing) => format!("— ({})", missing.reason),
    }
}

/// A value with true minus signs and no line break between number and unit.
pub(super) fn shown(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut before = None;
    let mut rest = text.chars().peekable();
    while let Some(c) = rest.next() {
        let opens = before.is_none_or(|before: char| before.is_whitespace() || before == '(');
        let minus = c == '-' && opens && rest.peek().is_some_and(char::is_ascii_digit);
        // A number keeps its unit on its line.
        let unit = c == ' '
            && before.is_some_and(|before: char| before.is_ascii_digit())
            && rest.peek().is_some_and(|next| next.is_alphabetic() || "°%Ω".contains(*next));
        out.push(match c {
            _ if minus => '\u{2212}',
            _ if unit => '\u{a0}',
            c => c,
        });
        before = Some(c);
    }
    out
}

/// What an author left out.
pub(super) fn given_or<T: ToString>(value: Option<&T>, otherwise: &str) -> String {
    value.map_or_else(|| otherwise.to_owned(), |value| shown(&value.to_string()))
}

/// `1 error`, `3 errors`.
pub(super) fn count(number: usize, one: &str, many: &str) -> String {
    format!("{number} {}", if number == 1 { one } else { many })
}

#[cfg(test)]
mod tests {
    use super::shown;

    #[test]
    fn only_a_minus_becomes_one() {
        assert_eq!(shown("-25.1 dBm"), "\u{2212}25.1\u{a0}dBm");
        assert_eq!(shown("-10.00° to -60.00°"), "\u{2212}10.00° to \u{2212}60.00°");
        assert_eq!(shown("1/4-20 stud"), "1/4-20\u{a0}stud");
        assert_eq!(shown("Cat 6A - outdoor"), "Cat 6A - outdoor");
        assert_eq!(shown("22 lbf·ft (29.8 N·m)"), "22\u{a0}lbf·ft (29.8\u{a0}N·m)");
    }
}
