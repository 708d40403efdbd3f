//! What a line of the sheet can hold, and how it is printed.

use super::saying::{Falls, Saying, Told};
use crate::physics::rain_outage::Outage;
use crate::physics::share::Share;
use crate::physics::worst_month::MonthOutage;
use crate::spec::Both;
use crate::units::{Decibels, Given, Metres, Millimetres, Percent, Quantity};

/// Something a line can hold.
pub trait Shown {
    /// The number in its base unit, if it is one.
    fn number(&self) -> Option<(f64, &'static str)>;
    /// As it is told.
    fn told(&self) -> Told;
}

impl<Q: Quantity> Shown for Q {
    fn number(&self) -> Option<(f64, &'static str)> {
        Some((self.base(), Q::KIND.unit))
    }
    fn told(&self) -> Told {
        Told::Number(self.to_string())
    }
}

impl<Q: Quantity> Shown for Given<Q> {
    fn number(&self) -> Option<(f64, &'static str)> {
        self.value.number()
    }
    fn told(&self) -> Told {
        Told::Number(self.to_string())
    }
}

impl Shown for Outage {
    fn number(&self) -> Option<(f64, &'static str)> {
        Some((self.at_most().0, "%"))
    }
    fn told(&self) -> Told {
        (*self).into()
    }
}

impl Shown for MonthOutage {
    fn number(&self) -> Option<(f64, &'static str)> {
        Some((self.at_most().0, "%"))
    }
    fn told(&self) -> Told {
        (*self).into()
    }
}

impl Shown for Share {
    fn number(&self) -> Option<(f64, &'static str)> {
        (self.least == self.most).then_some((self.most.0, "%"))
    }
    fn told(&self) -> Told {
        (*self).into()
    }
}

impl Shown for Falls {
    fn number(&self) -> Option<(f64, &'static str)> {
        None
    }
    fn told(&self) -> Told {
        Told::Said((*self).into())
    }
}

impl Shown for Saying {
    fn number(&self) -> Option<(f64, &'static str)> {
        None
    }
    fn told(&self) -> Told {
        Told::Said(self.clone())
    }
}

/// A bare number between things of one kind, to two decimals.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Ratio(pub f64);

impl std::fmt::Display for Ratio {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:.2}", self.0)
    }
}

impl Shown for Ratio {
    fn number(&self) -> Option<(f64, &'static str)> {
        Some((self.0, "1"))
    }
    fn told(&self) -> Told {
        Told::Number(self.to_string())
    }
}

/// A share of time that may be very small: told by two digits where four decimals would show none.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Rare(pub Percent);

impl std::fmt::Display for Rare {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let share = self.0.0;
        if !(1e-12..0.000_05).contains(&share) {
            return self.0.fmt(f);
        }
        let decimals = (5..=13).find(|decimals| share * libm::exp10(f64::from(*decimals)) >= 10.0).unwrap_or(13);
        f.write_str(&self.0.with_decimals(usize::try_from(decimals).unwrap_or_default()))
    }
}

impl Shown for Rare {
    fn number(&self) -> Option<(f64, &'static str)> {
        self.0.number()
    }
    fn told(&self) -> Told {
        Told::Number(self.to_string())
    }
}

/// A part of a whole, told without decimals.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Part(pub Percent);

impl std::fmt::Display for Part {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0.with_decimals(0))
    }
}

impl Shown for Part {
    fn number(&self) -> Option<(f64, &'static str)> {
        self.0.number()
    }
    fn told(&self) -> Told {
        Told::Number(self.to_string())
    }
}

/// How thick a cable is: a diameter, or two that it lies between.
#[derive(Debug, Clone, PartialEq)]
pub struct Across {
    /// The least, where only a range is known.
    pub least: Option<Given<Millimetres>>,
    /// The greatest.
    pub most: Given<Millimetres>,
}

impl Shown for Across {
    fn number(&self) -> Option<(f64, &'static str)> {
        self.most.number().filter(|_| self.least.is_none())
    }
    fn told(&self) -> Told {
        match &self.least {
            None => self.most.told(),
            Some(least) => Told::Said(Saying::range(least, &self.most)),
        }
    }
}

/// A length to the centimetre.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Fine(pub Metres);

impl std::fmt::Display for Fine {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0.with_decimals(2))
    }
}

impl Shown for Fine {
    fn number(&self) -> Option<(f64, &'static str)> {
        self.0.number()
    }
    fn told(&self) -> Told {
        Told::Number(self.to_string())
    }
}

/// How far to keep clear. Nowhere is said in words: a distance of nothing is no figure to act by.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct KeepClear(pub Metres);

impl Shown for KeepClear {
    fn number(&self) -> Option<(f64, &'static str)> {
        self.0.number()
    }
    fn told(&self) -> Told {
        if self.0.0 > 0.0 { self.0.told() } else { Told::Said(Saying::Never) }
    }
}

/// A clearance in radii of the first Fresnel zone.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Radii(pub f64);

impl std::fmt::Display for Radii {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        // No minus sign before a nought.
        let hundredths = (self.0 * 100.0).round() / 100.0 + 0.0;
        write!(f, "{hundredths:.2} F1")
    }
}

impl Shown for Radii {
    fn number(&self) -> Option<(f64, &'static str)> {
        Some((self.0, "F1"))
    }
    fn told(&self) -> Told {
        Told::Number(self.to_string())
    }
}

/// Loss over the obstacles, from a to b and from b to a: the two frequencies differ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BothWays(pub Both<Decibels>);

impl Shown for BothWays {
    fn number(&self) -> Option<(f64, &'static str)> {
        let Both { a: there, b: back } = self.0;
        (there == back).then_some((there.0, "dB"))
    }
    fn told(&self) -> Told {
        let Both { a: there, b: back } = self.0;
        if there.to_string() == back.to_string() {
            Told::Number(there.to_string())
        } else {
            Told::Said(Saying::EachWay { there, back })
        }
    }
}
