//! A number that knows its unit.

use super::kind::Kind;
use super::{number, print};

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
        print::write(self.base(), decimals, Self::KIND.unit)
    }

    /// The value without the dust of binary fractions: 1.1 m and 4.1 m are exactly 5.2 m.
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
