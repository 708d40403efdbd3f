//! A line of the sheet: a value with its words, its symbol, its method and the places it came from.

use super::reason::Reason;
use super::saying::{Falls, Saying, Told};
use super::title::Title;
use crate::finding::Spot;
use crate::physics::rain_outage::Outage;
use crate::physics::worst_month::{MonthOutage, Share};
use crate::place::Place;
use crate::units::{Given, Quantity};

/// One value of the sheet.
#[derive(Debug, Clone)]
pub struct Line<T> {
    /// The value, or why there is none.
    pub value: Result<T, Missing>,
    /// What a person would change to change it.
    pub from: Vec<Place>,
    /// How it was computed, where that is not the same for every hop.
    pub method: Option<&'static str>,
}

/// Why a value could not be computed.
#[derive(Debug, Clone, PartialEq)]
pub struct Missing {
    /// What a page says; for something broken, its name.
    pub reason: Reason,
    /// The input that is missing or out of range.
    pub spot: Spot,
    /// Who reports it.
    pub cause: Cause,
}

/// Why a value is missing, and so who reports it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cause {
    /// An input is not there or out of range: reported once a hop.
    Input,
    /// A rule of its own speaks of it.
    Judged,
    /// An input is broken and was reported where it stands; once a hop it is said what waits for it.
    Broken,
}

impl Missing {
    /// A reason that nothing else will report.
    pub fn new(reason: impl Into<Reason>, spot: impl Into<Spot>) -> Self {
        Self { reason: reason.into(), spot: spot.into(), cause: Cause::Input }
    }

    /// A reason that a rule reports under its own name.
    pub fn judged(reason: impl Into<Reason>, spot: impl Into<Spot>) -> Self {
        Self { cause: Cause::Judged, ..Self::new(reason, spot) }
    }

    /// A value that comes from one that is broken: its name, and the place where that is shown.
    #[must_use]
    pub fn broken(name: impl Into<Reason>, spot: Spot) -> Self {
        Self { reason: name.into(), spot, cause: Cause::Broken }
    }
}

impl<T> Line<T> {
    /// A line from its value and the inputs behind it.
    pub fn new(value: Result<T, Missing>, from: &[Place]) -> Self {
        Self { value, from: from.to_vec(), method: None }
    }

    /// A line that is there.
    pub fn known(value: T, from: &[Place]) -> Self {
        Self::new(Ok(value), from)
    }

    /// The same line with a method of its own.
    #[must_use]
    pub fn by(self, method: &'static str) -> Self {
        Self { method: Some(method), ..self }
    }
}

impl<T: Copy> Line<T> {
    /// The value, if there is one.
    pub fn get(&self) -> Option<T> {
        self.value.as_ref().ok().copied()
    }

    /// The value to compute on with; the reason is handed on.
    ///
    /// # Errors
    /// The reason this line has no value.
    pub fn need(&self) -> Result<T, Missing> {
        self.value.clone()
    }
}

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

/// A line without its type, to print.
#[derive(Debug, Clone)]
pub struct Row {
    /// Route within the sheet: `ends.a.true_bearing`.
    pub key: String,
    /// What it is, in words.
    pub words: &'static str,
    /// Its symbol, if it has one.
    pub symbol: &'static str,
    /// How it was computed and by what source; `as written` for an input.
    pub method: &'static str,
    /// What it holds, or why there is nothing.
    pub text: Result<Told, Missing>,
    /// The number in its base unit.
    pub number: Option<(f64, &'static str)>,
    /// What a person would change to change it.
    pub from: Vec<Place>,
}

/// Rows that belong together.
#[derive(Debug, Clone)]
pub struct Section {
    /// Route within the sheet.
    pub key: String,
    /// Heading.
    pub title: Title,
    /// Its rows.
    pub rows: Vec<Row>,
}

impl Section {
    /// A section whose rows are added by `fill`.
    pub fn of(key: impl Into<String>, title: Title, fill: impl FnOnce(&mut Vec<Row>)) -> Self {
        let mut rows = Vec::new();
        fill(&mut rows);
        Self { key: key.into(), title, rows }
    }
}

/// Declares a group of lines: field, type, symbol, words, method. The group can list its [`Row`]s.
macro_rules! lines {
    ($(#[$doc:meta])* $group:ident {
        $($field:ident: $type:ty, $symbol:literal, $words:literal, $method:expr;)+
    }) => {
        $(#[$doc])*
        #[derive(Debug, Clone)]
        pub struct $group {
            $(#[doc = concat!("`", $symbol, "`: ", $words, ".")] pub $field: $crate::sheet::Line<$type>,)+
        }

        impl $group {
            /// Takes the value from every line that came from something broken.
            pub fn mask(&mut self, broken: &dyn Fn(&$crate::place::Place) -> Option<$crate::sheet::Missing>) {
                $(if let Some(missing) = self.$field.from.iter().find_map(broken) {
                    self.$field.value = Err(missing);
                })+
            }

            /// Calls `each` with the words and the reason of every line without a value.
            pub fn missing(&self, each: &mut dyn FnMut(&'static str, &$crate::sheet::Missing)) {
                $(if let Err(missing) = &self.$field.value {
                    each($words, missing);
                })+
            }

            /// Adds its rows, their keys under `prefix`.
            pub fn rows(&self, prefix: &str, rows: &mut Vec<$crate::sheet::Row>) {
                use $crate::sheet::Shown as _;
                $(rows.push($crate::sheet::Row {
                    key: format!("{prefix}.{}", stringify!($field)),
                    words: $words,
                    symbol: $symbol,
                    method: self.$field.method.unwrap_or($method),
                    text: self.$field.value.as_ref().map(|value| value.told()).map_err(Clone::clone),
                    number: self.$field.value.as_ref().ok().and_then(|value| value.number()),
                    from: self.$field.from.clone(),
                });)+
            }
        }
    };
}

pub(super) use lines;

/// The method of a line that is an input.
pub const AS_WRITTEN: &str = "as written";
