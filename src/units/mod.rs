//! Quantities: numbers that know their unit.
//!
//! Every physical value in the program is a newtype made by `quantity!` in `kinds`: one base unit, a list of the units a
//! person may write, a range that physics allows, and one way of printing. `algebra` says which of them may be added,
//! `text` reads them, and [`Given`] keeps the words of the author beside the value.
//!
//! This module knows nothing of YAML files, rules or pages.

mod algebra;
mod apart;
mod fault;
mod given;
mod kind;
mod kinds;
mod number;
mod print;
mod quantity;
mod second;
mod slip;
mod text;
mod tube;

pub use apart::apart;
pub use fault::Fault;
pub use given::{Given, of_tube};
pub use kind::{Conversion, Kind, Spelling};
pub use kinds::*;
pub use quantity::Quantity;
pub use second::{
    TwoSystems, given_in_both, in_both, in_both_imperial_first, latitude_in_seconds, longitude_in_seconds,
};
pub use slip::Meant;
pub use text::read;

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
