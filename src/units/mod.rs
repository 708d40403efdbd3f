//! Quantities: numbers that know their unit.
//!
//! Every physical value in the program is a newtype made by `quantity!` in [`kinds`]: one base unit, a list of the units a
//! person may write, a range that physics allows, and one way of printing. [`algebra`] says which of them may be added,
//! [`text`] reads them, and [`Given`] keeps the words of the author beside the value.
//!
//! This module knows nothing of YAML files, rules or pages.

mod algebra;
mod given;
mod kinds;
mod second;
mod text;

pub use given::Given;
pub use kinds::*;
pub use second::{TwoSystems, given_in_both, in_both, latitude_in_seconds, longitude_in_seconds};
pub use text::{Fault, read};

/// How a written number becomes a number in the base unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Conversion {
    /// `base = factor × written`.
    Times(f64),
    /// `base = (written + offset) × factor`.
    Shifted {
        /// Added first, in the written unit.
        offset: f64,
        /// Applied second.
        factor: f64,
    },
    /// `base = 10 lg(written × milliwatts)`: a power written in watts, held in dBm.
    Milliwatts(f64),
    /// American wire gauge, `base` in square millimetres.
    WireGauge,
}

/// One unit a person may write, with all its spellings; the first is the one we print.
#[derive(Debug, Clone, Copy)]
pub struct Spelling {
    /// Accepted words, exact in case.
    pub words: &'static [&'static str],
    /// How the number beside the word is read.
    pub conversion: Conversion,
}

/// What the program must know of a kind of quantity without knowing its Rust type.
///
/// Reached by name from a schema, so that shape checking and typing read a text the same way.
#[derive(Debug)]
pub struct Kind {
    /// What it measures, in lower case: `length`.
    pub name: &'static str,
    /// Symbol of the base unit: `m`.
    pub unit: &'static str,
    /// A value as it should be written: `24.5 m`.
    pub example: &'static str,
    /// Least and greatest value physics or the trade allows, in the base unit.
    pub range: (f64, f64),
    /// The units that may be written.
    pub spellings: &'static [Spelling],
}

impl Kind {
    /// The kind with this name, as the schema's `x-quantity` gives it.
    #[must_use]
    pub fn named(name: &str) -> Option<&'static Self> {
        kinds::ALL.iter().copied().find(|kind| kind.name == name)
    }

    /// All accepted spellings, in order of preference: `mm, m, in, ft`.
    pub fn words(&self) -> impl Iterator<Item = &'static str> {
        self.spellings.iter().flat_map(|spelling| spelling.words.iter().copied())
    }
}

/// A number with a unit that the compiler checks.
pub trait Quantity: Copy + PartialOrd + std::fmt::Display + std::fmt::Debug + Send + Sync + 'static {
    /// The description shared by all values of the type.
    const KIND: &'static Kind;
    /// Decimals printed by default.
    const DECIMALS: usize;

    /// A value in the base unit.
    fn new(base: f64) -> Self;

    /// The number in the base unit.
    fn base(self) -> f64;

    /// The value with a stated number of decimals and its unit.
    #[must_use]
    fn with_decimals(self, decimals: usize) -> String {
        text::write(self.base(), decimals, Self::KIND.unit)
    }
}

/// Two values of one kind with enough decimals to be told apart.
///
/// A comparison is made in full precision, so `24.96` may fail a limit of `25`: it must not be printed as `25.0 is below
/// 25.0`. Stops at nine decimals.
#[must_use]
pub fn apart<Q: Quantity>(left: Q, right: Q) -> (String, String) {
    let mut decimals = Q::DECIMALS;
    loop {
        let (a, b) = (left.with_decimals(decimals), right.with_decimals(decimals));
        if a != b || decimals >= 9 {
            return (a, b);
        }
        decimals += 1;
    }
}
