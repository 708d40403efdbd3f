//! The `supply` document: what powers a radio over its cable.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Id, Kind, Text, Window};
use crate::units::{Given, MegabitsPerSecond, Volts, Watts};

/// A power supply, injector or switch port.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Supply {
    /// Always `supply`.
    #[schemars(extend("const" = "supply"))]
    pub kind: Kind,
    /// Short name; hops refer to it.
    pub id: Id,
    /// Maker and model as printed on the label.
    pub title: Text,
    /// How it hands power over.
    pub standard: Standard,
    /// Voltage at its port, least and greatest.
    pub voltage: Window<Volts>,
    /// Most power it gives at its port.
    pub power: Given<Watts>,
    /// Pairs it powers: 2 or 4.
    #[schemars(extend("enum" = [2, 4]))]
    pub pairs: u8,
    /// Line rate it passes. Without it, it passes no data.
    pub rate: Option<Given<MegabitsPerSecond>>,
    /// Where it may stand.
    pub location: Location,
}

/// How a supply hands power over.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum Standard {
    /// IEEE 802.3 Type 1.
    #[serde(rename = "802.3af")]
    Af,
    /// IEEE 802.3 Type 2.
    #[serde(rename = "802.3at")]
    At,
    /// IEEE 802.3 Type 3 or 4.
    #[serde(rename = "802.3bt")]
    Bt,
    /// Fixed voltage, no detection.
    #[serde(rename = "passive")]
    Passive,
}

impl Standard {
    /// The name as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Af => "802.3af",
            Self::At => "802.3at",
            Self::Bt => "802.3bt",
            Self::Passive => "passive",
        }
    }
}

/// Where a piece of equipment may stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Location {
    /// Under a dry roof.
    Indoor,
    /// In the weather.
    Outdoor,
}
