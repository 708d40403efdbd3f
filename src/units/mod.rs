//! Quantities: numbers that know their unit.
//!
//! Every physical value in the program is a newtype made by `quantity!` in `kinds`: one base unit, a list of the units a
//! person may write, a range that physics allows, and one way of printing. `algebra` says which of them may be added,
//! `text` reads them, and [`Given`] keeps the words of the author beside the value.
//!
//! This module knows nothing of YAML files, rules or pages.

mod algebra;
mod given;
mod kinds;
mod number;
mod second;
mod text;

pub use given::Given;
pub use kinds::*;
pub use second::{
    TwoSystems, given_in_both, in_both, in_both_imperial_first, latitude_in_seconds, longitude_in_seconds,
};
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

    /// The value without the dust of binary fractions: 1.1 m and 4.1 m are 5.2 m, no hair less.
    #[must_use]
    fn tidy(self) -> Self {
        Self::new(number::tidy(self.base()))
    }

    /// The least value that prints whole and is not below this one: what to ask for when this much is needed.
    #[must_use]
    fn rounded_up(self) -> Self {
        let one = steps::<Self>();
        Self::new(number::tidy(self.base() * one).ceil() / one)
    }

    /// The greatest value that prints whole and is not above this one: what to allow when this much is allowed.
    #[must_use]
    fn rounded_down(self) -> Self {
        let one = steps::<Self>();
        Self::new(number::tidy(self.base() * one).floor() / one)
    }
}

/// How many of the smallest printed steps make one base unit.
fn steps<Q: Quantity>() -> f64 {
    (0..Q::DECIMALS).fold(1.0, |steps, _| steps * 10.0)
}

/// Two values of one kind and the distance between them, with enough decimals to be told apart.
///
/// A comparison is made in full precision, so `24.96` may fail a limit of `25`: it must not be printed as `25.0 is below
/// 25.0`, nor the distance as `0.0`. Stops at nine decimals.
#[must_use]
pub fn apart<Q, D>(left: Q, right: Q) -> (String, String, String)
where
    Q: Quantity + std::ops::Sub<Q, Output = D>,
    D: Quantity,
{
    let distance = D::new((left - right).base().abs());
    let mut decimals = Q::DECIMALS;
    loop {
        let (a, b, between) =
            (left.with_decimals(decimals), right.with_decimals(decimals), distance.with_decimals(decimals));
        if decimals >= 9 || (a != b && between != D::new(0.0).with_decimals(decimals)) {
            return (a, b, between);
        }
        decimals += 1;
    }
}

#[cfg(test)]
mod tests {
    use super::{Dbm, Decibels, Metres, Millimetres, Quantity, apart, read};

    #[test]
    fn decimal_sums_and_inches_are_exact() {
        let sum = Metres(1.1) + Metres(4.1);
        assert_ne!(sum, Metres(5.2));
        assert_eq!(sum.tidy(), Metres(5.2));
        for (inches, millimetres) in [("3 in", 76.2), ("3 1/2 in", 88.9), ("8.5 in", 215.9), ("9 3/4 in", 247.65)] {
            assert_eq!(read(Millimetres::KIND, inches), Ok(millimetres));
        }
    }

    #[test]
    fn what_differs_is_printed_apart() {
        let text = |a: &str, b: &str, c: &str| (a.to_owned(), b.to_owned(), c.to_owned());
        assert_eq!(apart(Dbm(-29.994), Dbm(-30.0)), text("-29.99 dBm", "-30.00 dBm", "0.01 dB"));
        assert_eq!(apart(Metres(9.1), Metres(9.0)), text("9.1 m", "9.0 m", "0.1 m"));
        // 1.04 and 1.06 print apart at one decimal, but 0.02 would print as nothing.
        assert_eq!(apart(Metres(1.04), Metres(1.06)), text("1.04 m", "1.06 m", "0.02 m"));
    }

    #[test]
    fn advice_is_rounded_to_the_safe_side() {
        assert_eq!(Decibels(8.91).rounded_up(), Decibels(9.0));
        assert_eq!(Decibels(8.9).rounded_up(), Decibels(8.9));
        assert_eq!(Metres(56.69).rounded_down(), Metres(56.6));
        assert_eq!(Metres(-56.61).rounded_down(), Metres(-56.7));
    }
}
