//! The `feeder` document: coaxial cable and waveguide between a radio and its antenna.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Id, Kind, Ref, Text, Window};
use crate::units::{DecibelsPerKilometre, Gigahertz, Given, Metres, Millimetres};

/// A type of coaxial cable or waveguide.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Feeder {
    /// Always `feeder`.
    #[schemars(extend("const" = "feeder"))]
    pub kind: Kind,
    /// Short name; hops refer to it.
    pub id: Id,
    /// Whether it counts in place of a document of the same id in a shared library. Default `false`: the same id twice is an
    /// error.
    #[serde(default)]
    pub replaces: bool,
    /// Maker and model as printed on it.
    pub title: Text,
    /// What it is.
    pub construction: FeederConstruction,
    /// Frequencies it is made for.
    pub band: Window<Gigahertz>,
    /// Loss for its length by frequency, as its sheet states it. Between two points it is straight on logarithmic axes. Outside of
    /// them that of coaxial cable goes by the root of the frequency; that of a waveguide is known there only by `inside`.
    pub loss_by_frequency: Vec<FeederLoss>,
    /// Sides of a rectangular waveguide inside. With them its loss is known beyond the frequencies that are stated.
    pub inside: Option<Inside>,
}

/// What a feeder is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum FeederConstruction {
    /// Coaxial cable.
    Coaxial,
    /// A waveguide, stiff or flexible.
    Waveguide,
}

/// The loss at one frequency.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct FeederLoss {
    /// Frequency.
    pub frequency: Given<Gigahertz>,
    /// Loss for its length there: `1.9 dB/m`, `22 dB/100m`.
    pub loss: Given<DecibelsPerKilometre>,
}

/// The inside of a rectangular waveguide.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Inside {
    /// The wide side.
    pub width: Given<Millimetres>,
    /// The narrow side.
    pub height: Given<Millimetres>,
}

/// A feeder as it is used at an end.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct FeederUse {
    /// Feeder type.
    pub model: Ref<Feeder>,
    /// Its length.
    #[schemars(extend("x-least" = 0))]
    pub length: Given<Metres>,
}
