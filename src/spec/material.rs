//! What poles and brackets are made of.

use schemars::JsonSchema;
use serde::Deserialize;

/// A material of poles and brackets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Material {
    /// Bare steel.
    Steel,
    /// Steel under paint or powder.
    PaintedSteel,
    /// Steel dipped in zinc.
    GalvanisedSteel,
    /// Stainless steel.
    StainlessSteel,
    /// Aluminium and its alloys.
    Aluminium,
    /// Wood.
    Timber,
}

impl Material {
    /// The words for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Steel => "steel",
            Self::PaintedSteel => "painted steel",
            Self::GalvanisedSteel => "galvanised steel",
            Self::StainlessSteel => "stainless steel",
            Self::Aluminium => "aluminium",
            Self::Timber => "timber",
        }
    }
}
