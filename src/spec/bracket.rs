//! The `bracket` document: what holds radio and antenna to the support.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Cost, Id, Kind, Material, Text, Window};
use crate::units::{Degrees, Given, Kilograms, Millimetres, NewtonMetres};

/// A bracket model.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Bracket {
    /// Always `bracket`.
    #[schemars(extend("const" = "bracket"))]
    pub kind: Kind,
    /// Short name; hops refer to it.
    pub id: Id,
    /// Whether it counts in place of a document of the same id in a shared library. Default `false`: the same id twice is an
    /// error.
    #[serde(default)]
    pub replaces: bool,
    /// Maker and model as printed on the label.
    pub title: Text,
    /// What one, its plate included costs. `alternatives` puts the cheaper of two proposals first; nothing else goes by it.
    pub cost: Option<Cost>,
    /// Outside diameters the clamp closes on, as they measure or by the names of their sizes.
    #[schemars(extend("x-tube" = true))]
    pub pole: Window<Millimetres>,
    /// Tilt it gives without its extension plate.
    pub tilt: Tilt,
    /// Steepest downward tilt before the radio meets the pole, without the plate, whichever way up.
    pub stop: Option<Given<Degrees>>,
    /// What swings behind its pivot; where no `stop` is given, the stop follows from it.
    pub swing: Option<BracketSwing>,
    /// Extension plate, if there is one.
    pub plate: Option<Plate>,
    /// Azimuth the fine screw covers, each way from its middle.
    pub fine_azimuth: Option<Given<Degrees>>,
    /// Sideways distance of the antenna from the axis of the tube.
    #[schemars(extend("x-least" = 0))]
    pub offset: Option<Given<Millimetres>>,
    /// What it is made of.
    pub material: Option<Material>,
    /// Bands or U-bolts it is clamped with.
    pub bands: Option<u8>,
    /// Screws and their torque.
    #[serde(default)]
    pub fasteners: Vec<Fastener>,
    /// Mass.
    pub mass: Option<Given<Kilograms>>,
}

/// The room a radio has to nod before it meets the pole.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct BracketSwing {
    /// From the pivot to the face of the pole.
    pub clearance: Given<Millimetres>,
    /// How far the radio reaches back behind the pivot.
    pub back: Given<Millimetres>,
    /// How far it reaches above the pivot, and below.
    pub half_height: Given<Millimetres>,
}

/// Tilt a bracket gives, up positive.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Tilt {
    /// Mounted as its sheet draws it.
    pub upright: Window<Degrees>,
    /// Mounted upside down. Default: the upright range mirrored.
    pub inverted: Option<Window<Degrees>>,
}

/// A plate that holds the radio further off the pole and so frees more tilt.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Plate {
    /// Model as printed on the label.
    pub title: Text,
    /// Tilt with the plate fitted.
    pub tilt: Tilt,
}

/// Screws of one place on a bracket, an antenna or a support.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Fastener {
    /// Where they are and what they hold.
    pub title: Text,
    /// Thread, such as `M8` or `3/8-16 UNC`.
    pub thread: Text,
    /// Strength class as marked on the head. With it and the finish the torque is held against what the screw bears.
    pub class: Option<ScrewClass>,
    /// What the thread is coated with.
    pub finish: Option<Finish>,
    /// How many.
    pub count: u8,
    /// Tightening torque its maker gives.
    pub torque: Given<NewtonMetres>,
    /// Width of the wrench. Default that of the hexagon head of the thread by ISO 4017.
    #[schemars(extend("x-least" = 1))]
    pub wrench: Option<Given<Millimetres>>,
}

/// Strength class of a screw, as marked on its head.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum ScrewClass {
    /// ISO 898-1.
    #[serde(rename = "4.6")]
    S46,
    /// ISO 898-1.
    #[serde(rename = "5.6")]
    S56,
    /// ISO 898-1.
    #[serde(rename = "8.8")]
    S88,
    /// ISO 898-1.
    #[serde(rename = "10.9")]
    S109,
    /// Stainless steel, ISO 3506-1.
    #[serde(rename = "A2-50")]
    A2X50,
    /// Stainless steel, ISO 3506-1.
    #[serde(rename = "A2-70")]
    A2X70,
    /// Stainless steel, ISO 3506-1.
    #[serde(rename = "A2-80")]
    A2X80,
    /// Stainless steel, ISO 3506-1.
    #[serde(rename = "A4-50")]
    A4X50,
    /// Stainless steel, ISO 3506-1.
    #[serde(rename = "A4-70")]
    A4X70,
    /// Stainless steel, ISO 3506-1.
    #[serde(rename = "A4-80")]
    A4X80,
    /// SAE J429.
    #[serde(rename = "grade 2")]
    Grade2,
    /// SAE J429.
    #[serde(rename = "grade 5")]
    Grade5,
    /// SAE J429.
    #[serde(rename = "grade 8")]
    Grade8,
}

impl ScrewClass {
    /// The mark as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::S46 => "4.6",
            Self::S56 => "5.6",
            Self::S88 => "8.8",
            Self::S109 => "10.9",
            Self::A2X50 => "A2-50",
            Self::A2X70 => "A2-70",
            Self::A2X80 => "A2-80",
            Self::A4X50 => "A4-50",
            Self::A4X70 => "A4-70",
            Self::A4X80 => "A4-80",
            Self::Grade2 => "grade 2",
            Self::Grade5 => "grade 5",
            Self::Grade8 => "grade 8",
        }
    }
}

/// What is on a thread.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Finish {
    /// As received, or with electroplated zinc.
    Dry,
    /// Dipped in zinc, dry.
    Galvanised,
    /// Oil.
    Oiled,
    /// Anti-seize or wax.
    AntiSeize,
}
