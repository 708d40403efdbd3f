//! The `neighbour` document: one end of a hop of somebody else, as a licence register has it.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Id, Kind, PatternPoint, Polarisation, Position, Text};
use crate::units::{Dbi, Dbm, Decibels, Degrees, Gigahertz, Given, Megahertz, Metres, Millimetres};

/// An antenna of another owner: what it sends reaches the hops of this network, what it listens to must not be drowned.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Neighbour {
    /// Always `neighbour`.
    #[schemars(extend("const" = "neighbour"))]
    pub kind: Kind,
    /// Short name: that of the register, for instance.
    pub id: Id,
    /// Whether it counts in place of a document of the same id in a shared library. Default `false`: the same id twice is an
    /// error.
    #[serde(default)]
    pub replaces: bool,
    /// Name as people say it.
    pub title: Option<Text>,
    /// Whom to ask.
    pub owner: Option<Text>,
    /// Where it is, on the WGS 84 ellipsoid.
    pub position: Position,
    /// Ground above mean sea level there.
    #[schemars(extend("x-least" = -500, "x-most" = 9000))]
    pub ground_height: Given<Metres>,
    /// Antenna centre above the ground.
    #[schemars(extend("x-most" = 1000))]
    pub height: Given<Metres>,
    /// True bearing that its antenna is aimed at.
    pub bearing: Given<Degrees>,
    /// How far up it is aimed; level if not given.
    #[schemars(extend("x-least" = -90, "x-most" = 90))]
    pub elevation: Option<Given<Degrees>>,
    /// Polarisation it sends and listens with.
    pub polarisation: Polarisation,
    /// Gain of its antenna over an isotropic one.
    pub gain: Given<Dbi>,
    /// Diameter of its antenna. Without it that of an antenna of the same gain is taken.
    #[schemars(extend("x-least" = 1))]
    pub diameter: Option<Given<Millimetres>>,
    /// Cross-polar discrimination of its antenna on the axis. None is counted if not given.
    #[schemars(extend("x-least" = 0))]
    pub cross_polar: Option<Given<Decibels>>,
    /// Measured pattern of its antenna. Without it the reference pattern of ITU-R F.699 stands in.
    #[serde(default)]
    pub pattern: Vec<PatternPoint>,
    /// What it sends.
    pub sends: Option<NeighbourSends>,
    /// What it listens to.
    pub listens: Option<NeighbourListens>,
}

/// What an antenna of another owner sends.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct NeighbourSends {
    /// Centre frequency.
    pub frequency: Given<Gigahertz>,
    /// Occupied bandwidth.
    pub bandwidth: Given<Megahertz>,
    /// Radiated power on the axis, over an isotropic antenna; of each carrier where there are two.
    pub eirp: Given<Dbm>,
}

/// What an antenna of another owner listens to.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct NeighbourListens {
    /// Centre frequency.
    pub frequency: Given<Gigahertz>,
    /// Occupied bandwidth.
    pub bandwidth: Given<Megahertz>,
    /// Noise figure of its receiver. Default 2 dB: no receiver at these frequencies is quieter (common practice, no source).
    #[schemars(extend("x-least" = 0))]
    pub noise_figure: Option<Given<Decibels>>,
}
