//! The `arrester` document: a surge protector for a data cable.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Category, Cost, Id, ImpulseTest, Kind, Text};
use crate::units::{Amperes, Given, ImpulseVolts, MegabitsPerSecond, Ohms, Volts};

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
    /// Highest voltage it passes without conducting: its maximum continuous voltage Uc, for direct current.
    pub voltage: Given<Volts>,
    /// Rated current of each of its conductors. With it the current of the run is held against it.
    pub rated_current: Option<Given<Amperes>>,
    /// Category of cabling that it keeps to, by ISO/IEC 11801. With it the rate of the port is held against it.
    pub category: Option<Category>,
    /// Impulse tests that it has passed, by IEC 61643-21.
    #[serde(default)]
    pub impulse_tests: Vec<ImpulseTest>,
    /// Voltage protection level Up from any line to earth, at the impulse its sheet names: the most that it lets through.
    pub protection_level: Option<Given<ImpulseVolts>>,
}
