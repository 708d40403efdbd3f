//! What a piece of equipment costs: to tell alternatives apart, and for nothing else.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Number, Text};

/// What a piece of equipment costs.
#[derive(Debug, Clone, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Cost {
    /// How much: of one piece; of a cable, of one metre. Zero or more.
    #[schemars(extend("minimum" = 0))]
    pub amount: Number,
    /// In what currency, such as `EUR`. Amounts in different currencies are not compared.
    pub currency: Text,
}
