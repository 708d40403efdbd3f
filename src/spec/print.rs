//! How the packs of a network are printed.

use schemars::JsonSchema;
use serde::Deserialize;

/// Paper and words of the packs.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Print {
    /// Sheet size. Default `a4`.
    pub paper: Option<Paper>,
    /// Language of the packs. Default `en`.
    pub language: Option<Language>,
    /// Which system of units comes first where a computed length or torque is printed in both. Default `metric`. What an
    /// author wrote always comes first in the unit it was written in.
    pub units: Option<System>,
    /// Sign between the whole number and its decimals. Default `point`, as instruments and the YAML have it.
    pub decimal_sign: Option<DecimalSign>,
}

/// A sheet size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Paper {
    /// 210 mm by 297 mm.
    #[default]
    A4,
    /// 8.5 in by 11 in.
    Letter,
}

/// A language that packs are printed in, by its ISO 639-1 code.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Language {
    /// English.
    #[default]
    En,
    /// German.
    De,
}

impl Language {
    /// All.
    pub const ALL: [Self; 2] = [Self::En, Self::De];

    /// The ISO 639-1 code.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::De => "de",
        }
    }

    /// The language of a code.
    #[must_use]
    pub fn of(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|language| language.code() == code)
    }
}

/// A system of units.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum System {
    /// Metres, millimetres, newton metres.
    #[default]
    Metric,
    /// Feet, inches, pound-force feet.
    Imperial,
}

/// The sign before the decimals of a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum DecimalSign {
    /// `25.1`.
    #[default]
    Point,
    /// `25,1`.
    Comma,
}
