//! The version of the program that a network is written for.

use std::borrow::Cow;
use std::fmt;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::Deserialize;
use serde::de::Deserializer;

/// The least version that will do: `>=0.1`, `>=0.1.2`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct LeastVersion {
    major: u32,
    minor: u32,
    patch: u32,
}

impl LeastVersion {
    /// Reads `>=` and two or three numbers.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        Self::numbers(text.trim().strip_prefix(">=")?.trim_start())
    }

    /// This program.
    #[must_use]
    pub fn of_this() -> Self {
        let version = env!("CARGO_PKG_VERSION");
        Self::numbers(version.split(['-', '+']).next().unwrap_or(version)).unwrap_or(Self {
            major: 0,
            minor: 0,
            patch: 0,
        })
    }

    fn numbers(text: &str) -> Option<Self> {
        let number = |part: &str| part.bytes().all(|byte| byte.is_ascii_digit()).then(|| part.parse().ok()).flatten();
        let mut parts = text.split('.');
        let (major, minor) = (number(parts.next()?)?, number(parts.next()?)?);
        let patch = parts.next().map_or(Some(0), number)?;
        parts.next().is_none().then_some(Self { major, minor, patch })
    }

    /// Whether this program will do.
    #[must_use]
    pub fn is_met(self) -> bool {
        Self::of_this() >= self
    }
}

impl fmt::Display for LeastVersion {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.{}.{}", self.major, self.minor, self.patch)
    }
}

impl<'de> Deserialize<'de> for LeastVersion {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::read(&text).ok_or_else(|| serde::de::Error::custom("no version to ask for: write `\">=0.1\"`"))
    }
}

impl JsonSchema for LeastVersion {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> Cow<'static, str> {
        "LeastVersion".into()
    }
    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": "string", "pattern": r"^\s*>=\s*[0-9]+\.[0-9]+(\.[0-9]+)?\s*$", "maxLength": 32,
            "examples": [">=0.1"], "x-form": "requires"
        })
    }
}

#[cfg(test)]
mod tests {
    use super::LeastVersion;

    #[test]
    fn versions_are_numbers_in_order() {
        let read = |text| LeastVersion::read(text);
        assert!(
            read(">=0.2") < read(">=0.10") && read(">= 0.2.0") == read(">=0.2") && read(">=1.0") > read(">=0.99.99")
        );
        for wrong in ["0.2", ">=0", ">=0.2.1.0", ">=0.x", ">=", "<=0.2", ">=0.+2", ">=99999999999.0", ">=.1"] {
            assert_eq!(read(wrong), None, "{wrong}");
        }
        assert!(LeastVersion::read(">=0.1").is_some_and(LeastVersion::is_met));
    }
}
