//! How a table of text separates its cells and writes decimals.

use schemars::JsonSchema;
use serde::Deserialize;

/// How a CSV file separates its cells and writes decimals.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Dialect {
    /// Commas between cells, points before decimals: RFC 4180.
    Comma,
    /// Semicolons between cells, commas before decimals: what many spreadsheets of Europe write.
    Semicolon,
    /// Semicolons between cells, points before decimals.
    SemicolonPoint,
    /// Tabs between cells, points before decimals.
    Tab,
    /// Tabs between cells, commas before decimals.
    TabComma,
}

impl Dialect {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Comma, Self::Semicolon, Self::SemicolonPoint, Self::Tab, Self::TabComma];

    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Comma => "comma",
            Self::Semicolon => "semicolon",
            Self::SemicolonPoint => "semicolon-point",
            Self::Tab => "tab",
            Self::TabComma => "tab-comma",
        }
    }

    /// What stands between two cells.
    #[must_use]
    pub const fn separator(self) -> char {
        match self {
            Self::Comma => ',',
            Self::Semicolon | Self::SemicolonPoint => ';',
            Self::Tab | Self::TabComma => '\t',
        }
    }

    /// What stands before decimals.
    #[must_use]
    pub const fn decimal(self) -> char {
        match self {
            Self::Comma | Self::SemicolonPoint | Self::Tab => '.',
            Self::Semicolon | Self::TabComma => ',',
        }
    }
}
