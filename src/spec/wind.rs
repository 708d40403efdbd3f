//! Wind as a network, a hop or a site states it.

use schemars::JsonSchema;
use serde::Deserialize;

use crate::units::{Given, MetresPerSecond};

/// Wind the hop must stand.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Wind {
    /// Wind in which the hop must hold its level.
    pub operating: Given<MetresPerSecond>,
    /// Wind in which nothing may break.
    pub survival: Option<Given<MetresPerSecond>>,
    /// What the speeds are. Default `gust-at-antenna`.
    #[serde(default)]
    pub speeds: WindSpeeds,
}

/// What a wind speed is: a gust where the antenna stands, or the figure of a code for the region.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum WindSpeeds {
    /// A gust at the antenna itself.
    #[default]
    #[serde(rename = "gust-at-antenna")]
    Gust,
    /// Ten-minute mean 10 m above open ground; the antenna stands by the sea.
    #[serde(rename = "EN 1991-1-4 0")]
    EnSea,
    /// The same; lakes, flat land without obstacles.
    #[serde(rename = "EN 1991-1-4 I")]
    EnFlat,
    /// The same; low growth, single trees and buildings.
    #[serde(rename = "EN 1991-1-4 II")]
    EnOpen,
    /// The same; villages, suburbs, woods.
    #[serde(rename = "EN 1991-1-4 III")]
    EnSuburb,
    /// The same; a seventh or more under buildings over 15 m.
    #[serde(rename = "EN 1991-1-4 IV")]
    EnTown,
    /// Three-second gust 10 m above open ground; the antenna stands in a town or wood.
    #[serde(rename = "ASCE 7 B")]
    AsceB,
    /// The same; open country.
    #[serde(rename = "ASCE 7 C")]
    AsceC,
    /// The same; flat land or water.
    #[serde(rename = "ASCE 7 D")]
    AsceD,
}
