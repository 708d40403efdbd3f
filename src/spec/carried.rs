//! What a cable run is there for, and a port.

use schemars::JsonSchema;
use serde::Deserialize;

/// What a run is there for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Carried {
    /// Traffic.
    Data,
    /// Power to the radio.
    Power,
    /// Power from the radio to something else.
    PowerOut,
}
