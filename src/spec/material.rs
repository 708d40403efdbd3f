//! What poles and brackets are made of.

use schemars::JsonSchema;
use serde::Deserialize;

/// A material of poles and brackets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Material {
    /// Steel, bare or painted.
    Steel,
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
            Self::GalvanisedSteel => "galvanised steel",
            Self::StainlessSteel => "stainless steel",
            Self::Aluminium => "aluminium",
            Self::Timber => "timber",
        }
    }
}
