//! The `antenna` document.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Cost, Fastener, Id, Kind, Text, Window};
use crate::units::{Dbi, Decibels, Degrees, Gigahertz, Given, Kilograms, Millimetres, SquareMetres};

/// An antenna model; one that is built into a radio is written here too.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Antenna {
    /// Always `antenna`.
    #[schemars(extend("const" = "antenna"))]
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
    /// Frequencies it is made for.
    pub band: Window<Gigahertz>,
    /// Gain over an isotropic antenna at mid-band, or at `gain_at`.
    pub gain: Given<Dbi>,
    /// Frequency that `gain` is stated for. With it the gain grows with the frequency by 20 lg f, so that the two halves of a
    /// hop differ as they do; without it `gain` counts at both.
    pub gain_at: Option<Given<Gigahertz>>,
    /// Gain by frequency, as the sheet of the antenna states it: straight between its points, by 20 lg f beyond them. Where it
    /// is given, `gain` and `gain_at` are not computed with.
    #[serde(default)]
    pub gain_by_frequency: Vec<GainPoint>,
    /// How far the gain may be off, either way.
    #[schemars(extend("x-least" = 0))]
    pub gain_tolerance: Option<Given<Decibels>>,
    /// Loss of a wet cover while it rains, at this one antenna. Taken off the margin that rain may use up; none if not
    /// given. There is no ITU method: some 1.5 dB were measured, less on covers that shed water.
    #[schemars(extend("x-least" = 0))]
    pub wet_loss: Option<Given<Decibels>>,
    /// Least cross-polar discrimination on the axis: how much weaker the other polarisation comes through. For dual-polarised
    /// hops, and for interference between hops of crossed polarisations: without it crossing them helps nothing.
    #[schemars(extend("x-least" = 0))]
    pub cross_polar: Option<Given<Decibels>>,
    /// Full width of the main beam between its half-power points.
    #[schemars(extend("x-least" = 0))]
    pub beamwidth: Given<Degrees>,
    /// Diameter of the reflector or aperture. Without it that of an antenna of the same gain is taken.
    #[schemars(extend("x-least" = 20))]
    pub diameter: Option<Given<Millimetres>>,
    /// Measured pattern, outwards from the axis, through the first null and the first side lobe at least. Without it
    /// the side lobes are those of a round aperture, and the reference patterns of the ITU stand in further out.
    #[serde(default)]
    pub pattern: Vec<PatternPoint>,
    /// Area it shows to the wind.
    pub wind_area: Option<Given<SquareMetres>>,
    /// Screws that hold it to the radio or to the bracket, and their torque.
    #[serde(default)]
    pub fasteners: Vec<Fastener>,
    /// Mass.
    pub mass: Option<Given<Kilograms>>,
}

/// The gain at one frequency.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct GainPoint {
    /// Frequency.
    pub frequency: Given<Gigahertz>,
    /// Gain over an isotropic antenna there.
    pub gain: Given<Dbi>,
}

/// A point of a measured pattern.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct PatternPoint {
    /// Angle off the axis.
    #[schemars(extend("x-least" = 0))]
    pub angle: Given<Degrees>,
    /// How much less the gain is there than on the axis.
    #[schemars(extend("x-least" = 0))]
    pub below: Given<Decibels>,
}
