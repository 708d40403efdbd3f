//! What may be added to what.
//!
//! Like quantities add and subtract to their own kind; a level takes a loss or a gain and stays a level; two levels
//! subtract to a ratio. Two levels do not add:
//!
//! ```compile_fail
//! use hopwright::units::Dbm;
//! let nonsense = Dbm(10.0) + Dbm(10.0);
//! ```
//!
//! nor does a bare ratio stand where a level is asked for:
//!
//! ```compile_fail
//! use hopwright::units::{Dbm, Decibels};
//! let level: Dbm = Decibels(3.0);
//! ```

use std::ops::{Add, Mul, Neg, Sub};

use super::{
    Amperes, Dbi, Dbm, Decibels, DecibelsPerKilometre, Degrees, Gigahertz, ImpulseVolts, Kiloamperes,
    MegabitsPerSecond, Megapascals, MeterVolts, Metres, Millimetres, MillimetresPerHour, Milliseconds, Minutes,
    NewtonMetres, Newtons, Ohms, OhmsPerKilometre, Percent, SquareMillimetres, Volts, Watts,
};

macro_rules! operator {
    ($($left:ident $op:tt $right:ident = $out:ident;)+) => { $(operator!(@ $op $left $right $out);)+ };
    (@ + $left:ident $right:ident $out:ident) => {
        impl Add<$right> for $left {
            type Output = $out;
            fn add(self, other: $right) -> $out {
                $out(self.0 + other.0)
            }
        }
    };
    (@ - $left:ident $right:ident $out:ident) => {
        impl Sub<$right> for $left {
            type Output = $out;
            fn sub(self, other: $right) -> $out {
                $out(self.0 - other.0)
            }
        }
    };
    (@ * $left:ident $right:ident $out:ident) => {
        impl Mul<$right> for $left {
            type Output = $out;
            fn mul(self, other: $right) -> $out {
                $out(self.0 * other.0)
            }
        }
    };
}

operator! {
    Dbm + Decibels = Dbm;
    Dbm - Decibels = Dbm;
    Dbm + Dbi = Dbm;
    Dbm - Dbm = Decibels;
    Dbm - Dbi = Dbm;
    Megapascals - Megapascals = Megapascals;
    Newtons - Newtons = Newtons;
    NewtonMetres - NewtonMetres = NewtonMetres;
    Decibels + Decibels = Decibels;
    Decibels - Decibels = Decibels;
    DecibelsPerKilometre + DecibelsPerKilometre = DecibelsPerKilometre;
    Dbi - Dbi = Decibels;
    Dbi + Decibels = Dbi;
    Dbi - Decibels = Dbi;
    Metres + Metres = Metres;
    Metres - Metres = Metres;
    Millimetres + Millimetres = Millimetres;
    Millimetres - Millimetres = Millimetres;
    SquareMillimetres - SquareMillimetres = SquareMillimetres;
    Degrees + Degrees = Degrees;
    Degrees - Degrees = Degrees;
    Gigahertz + Gigahertz = Gigahertz;
    Gigahertz - Gigahertz = Gigahertz;
    MillimetresPerHour - MillimetresPerHour = MillimetresPerHour;
    Ohms + Ohms = Ohms;
    Percent + Percent = Percent;
    Percent - Percent = Percent;
    Minutes - Minutes = Minutes;
    Milliseconds + Milliseconds = Milliseconds;
    Milliseconds - Milliseconds = Milliseconds;
    Volts + Volts = Volts;
    Volts - Volts = Volts;
    MeterVolts - MeterVolts = MeterVolts;
    MegabitsPerSecond - MegabitsPerSecond = MegabitsPerSecond;
    Volts * Amperes = Watts;
    Watts + Watts = Watts;
    Watts - Watts = Watts;
    Amperes - Amperes = Amperes;
    ImpulseVolts - ImpulseVolts = ImpulseVolts;
    Kiloamperes - Kiloamperes = Kiloamperes;
}

impl Mul<Metres> for DecibelsPerKilometre {
    type Output = Decibels;
    fn mul(self, path: Metres) -> Decibels {
        Decibels(self.0 * (path.0 / 1000.0))
    }
}

impl Mul<Metres> for OhmsPerKilometre {
    type Output = Ohms;
    fn mul(self, length: Metres) -> Ohms {
        Ohms(self.0 * (length.0 / 1000.0))
    }
}

impl Neg for Degrees {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

impl Neg for Decibels {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

impl std::iter::Sum for Metres {
    fn sum<I: Iterator<Item = Self>>(values: I) -> Self {
        values.fold(Self(0.0), Add::add)
    }
}
