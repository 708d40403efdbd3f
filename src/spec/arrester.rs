//! The `arrester` document: a surge protector for a data cable.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Cost, Id, Kind, Text};
use crate::units::{Given, MegabitsPerSecond, Ohms, Volts};

/// A surge arrester model.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Arrester {
    /// Always `arrester`.
    #[schemars(extend("const" = "arrester"))]
    pub kind: Kind,
    /// Short name; hops refer to it.
    pub id: Id,
    /// Whether it counts in place of a document of the same id in a shared library. Default `false`: the same id twice is an
    /// error.
    #[serde(default)]
    pub replaces: bool,
    /// Maker and model as printed on the label.
    pub title: Text,
    /// What one costs. `alternatives` puts the cheaper of two proposals first; nothing else goes by it.
    pub cost: Option<Cost>,
    /// Line rate it passes.
    pub rate: Given<MegabitsPerSecond>,
    /// Pairs it passes power on: 2 or 4; 1 for two cores.
    #[schemars(extend("enum" = [1, 2, 4]))]
    pub pairs: u8,
    /// Resistance it puts in series with each conductor.
    pub series_resistance: Given<Ohms>,
    /// Highest voltage it passes without conducting.
    pub voltage: Given<Volts>,
}
