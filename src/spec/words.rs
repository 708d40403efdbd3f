//! The small words of the language: text, ids, references, dates and windows.

use std::borrow::Cow;
use std::fmt;
use std::marker::PhantomData;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::Deserialize;
use serde::de::Deserializer;

use super::Spec;
use crate::units::{Given, Quantity};

/// The longest id: it names files and stands in narrow columns.
pub const LONGEST_ID: usize = 64;

/// What an id is made of, as a regular expression.
const ID: &str = "[a-z0-9]+(-[a-z0-9]+)*";

/// What the name of a standard part starts with: no document of a network may.
pub const STANDARD: &str = "std:";

/// The longest title: it stands in headings and tables.
pub const LONGEST_TITLE: usize = 300;

macro_rules! string_like {
    ($($(#[$doc:meta])* $type:ident $schema:tt)+) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
        pub struct $type(pub String);

        impl std::ops::Deref for $type {
            type Target = str;
            fn deref(&self) -> &str {
                &self.0
            }
        }

        impl fmt::Display for $type {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(&self.0)
            }
        }

        impl JsonSchema for $type {
            fn inline_schema() -> bool {
                true
            }
            fn schema_name() -> Cow<'static, str> {
                stringify!($type).into()
            }
            fn json_schema(_: &mut SchemaGenerator) -> Schema {
                json_schema!($schema)
            }
        }
    )+};
}

string_like! {
    /// Free text on one or more lines. Numbers, dates and booleans meant as text are quoted in the YAML.
    Text { "type": "string", "minLength": 1 }
    /// The name of a thing, unique among its kind: lower-case letters, digits and hyphens.
    Id {
        "type": "string", "pattern": format!("^{ID}$"), "maxLength": LONGEST_ID, "examples": ["north-mast"],
        "x-form": "id"
    }
}

/// A plain number without a unit, unquoted.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
pub struct Number(pub f64);

impl JsonSchema for Number {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> Cow<'static, str> {
        "Number".into()
    }
    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "number", "examples": [-4.2] })
    }
}

/// The id of a document of kind `T`.
pub struct Ref<T> {
    id: Id,
    kind: PhantomData<fn() -> T>,
}

impl<T> Clone for Ref<T> {
    fn clone(&self) -> Self {
        Self { id: self.id.clone(), kind: PhantomData }
    }
}

impl<T> std::ops::Deref for Ref<T> {
    type Target = Id;
    fn deref(&self) -> &Id {
        &self.id
    }
}

impl<T: Spec> fmt::Debug for Ref<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", T::KIND, self.id)
    }
}

impl<T> fmt::Display for Ref<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.id)
    }
}

impl<'de, T> Deserialize<'de> for Ref<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Id::deserialize(deserializer).map(|id| Self { id, kind: PhantomData })
    }
}

impl<T: Spec> JsonSchema for Ref<T> {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> Cow<'static, str> {
        format!("Ref{}", T::KIND).into()
    }
    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let mut schema = Id::json_schema(generator);
        schema.insert("pattern".into(), format!("^({STANDARD})?{ID}$").into());
        schema.insert("x-refers-to".into(), T::KIND.word().into());
        schema.insert("examples".into(), serde_json::json!([format!("some-{}", T::KIND)]));
        schema
    }
}

/// A calendar day, ISO 8601: `2026-05-18`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Date {
    /// Year of the common era.
    pub year: u16,
    /// 1 to 12.
    pub month: u8,
    /// 1 to the length of the month.
    pub day: u8,
}

impl Date {
    /// The first and the last year of anything a network speaks of.
    pub const YEARS: (u16, u16) = (1900, 2199);

    /// Reads `YYYY-MM-DD`; `None` when it is not a calendar date.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let digits = |part: &str, length| part.len() == length && part.bytes().all(|b| b.is_ascii_digit());
        let mut parts = text.split('-');
        let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
        if parts.next().is_some() || !digits(year, 4) || !digits(month, 2) || !digits(day, 2) {
            return None;
        }
        let date = Self { year: year.parse().ok()?, month: month.parse().ok()?, day: day.parse().ok()? };
        (1..=date.days_in_month()).contains(&date.day).then_some(date)
    }

    /// The days that `20.08.2024`, `08/20/2024` or `2024/8/20` may stand for: none, one, or two where nobody can tell.
    #[must_use]
    pub fn read_other(text: &str) -> Vec<String> {
        let parts: Vec<&str> = text.trim().split(['.', '/', '-', ' ']).filter(|part| !part.is_empty()).collect();
        let [one, two, three] = parts.as_slice() else { return Vec::new() };
        let tries = if one.len() == 4 {
            [(one, two, three), (one, three, two)]
        } else {
            [(three, two, one), (three, one, two)]
        };
        let padded = |(year, month, day): (&&str, &&str, &&str)| format!("{year}-{month:0>2}-{day:0>2}");
        let mut days: Vec<String> = tries.map(padded).into_iter().filter(|day| Self::read(day).is_some()).collect();
        // A day with the year first is written with the month before the day; with dots the day comes first.
        if one.len() == 4 || text.contains('.') {
            days.truncate(1);
        }
        days.dedup();
        days
    }

    fn days_in_month(self) -> u8 {
        let leap = self.year.is_multiple_of(4) && (!self.year.is_multiple_of(100) || self.year.is_multiple_of(400));
        match self.month {
            1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
            4 | 6 | 9 | 11 => 30,
            2 => 28 + u8::from(leap),
            _ => 0,
        }
    }
}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

impl<'de> Deserialize<'de> for Date {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::read(&text).ok_or_else(|| serde::de::Error::custom("no day of the calendar: write YYYY-MM-DD"))
    }
}

impl JsonSchema for Date {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> Cow<'static, str> {
        "Date".into()
    }
    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": "string", "format": "date", "pattern": "^(19|20|21)[0-9]{2}-[0-9]{2}-[0-9]{2}$",
            "description": "From 1900-01-01 to 2199-12-31.",
            "examples": ["2026-05-18"], "x-form": "date"
        })
    }
}

/// A least and a greatest value, both allowed.
#[derive(Debug, Clone, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, bound = "Q: Quantity")]
#[schemars(inline, bound = "Q: Quantity")]
pub struct Window<Q: Quantity> {
    /// The least value.
    pub min: Given<Q>,
    /// The greatest value.
    pub max: Given<Q>,
}

impl<Q: Quantity> Window<Q> {
    /// Whether the value lies inside, ends included.
    #[must_use]
    pub fn holds(&self, value: Q) -> bool {
        self.min.value <= value && value <= self.max.value
    }
}

impl<Q: Quantity> fmt::Display for Window<Q> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} to {}", self.min, self.max)
    }
}

#[cfg(test)]
mod tests {
    use super::Date;

    #[test]
    fn dates_are_days_of_the_calendar() {
        assert_eq!(Date::read("2028-02-29").map(|date| date.to_string()), Some("2028-02-29".into()));
        for wrong in ["2026-02-29", "2026-13-01", "2026-1-01", "26-01-01", "2026-01-01-01", "today", "2026-04-31"] {
            assert_eq!(Date::read(wrong), None, "{wrong}");
        }
    }
}
