//! Where the figures of a document come from.

use schemars::JsonSchema;
use serde::Deserialize;

use super::Text;

/// Where some figures of a document come from, and how sure they are.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Source {
    /// Keys it speaks of. Without them, of the whole document.
    #[serde(default)]
    pub of: Vec<Text>,
    /// Standard and clause, sheet and issue, who measured it.
    pub text: Text,
    /// How sure it is.
    pub sure: Sure,
}

/// How sure a figure is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Sure {
    /// The least or the most that a standard or a maker allows.
    Limit,
    /// What is usually found: nothing that is held to it is safe at the edge.
    Typical,
    /// What is on sale, where no standard sets it: both ends of it have to do.
    TradeRange,
    /// Found with an instrument.
    Measured,
}

impl Sure {
    /// The words for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Limit => "limit",
            Self::Typical => "typical",
            Self::TradeRange => "range of the trade",
            Self::Measured => "measured",
        }
    }
}
