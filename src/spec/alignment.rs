//! What a crew aligns by, and how a radio behaves while it does.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Id, Text, Window};
use crate::units::{Dbm, Decibels, Given, Milliseconds, Volts};

/// The voltage a crew aligns by: a straight line through two points.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Readout {
    /// Port the meter is put on. It must be free while aligning.
    pub port: Id,
    /// Voltages the output can give.
    pub range: Window<Volts>,
    /// One point of the scale.
    pub low: ReadoutPoint,
    /// Another point of the scale.
    pub high: ReadoutPoint,
    /// How far the level it means may be off, either way.
    #[schemars(extend("x-least" = 0))]
    pub tolerance: Option<Given<Decibels>>,
}

/// A point of the read-out scale.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct ReadoutPoint {
    /// What the meter shows.
    #[schemars(extend("x-least" = -20, "x-most" = 20))]
    pub voltage: Given<Volts>,
    /// The received level it means.
    pub level: Given<Dbm>,
}

/// The level a radio shows of itself.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct ShownLevel {
    /// Where: a page and a line of it, a display, an app.
    pub at: Text,
    /// How long after a turn of the antenna it shows the new level.
    #[schemars(extend("x-least" = 0))]
    pub lag: Option<Given<Milliseconds>>,
    /// How far it may be off, either way.
    #[schemars(extend("x-least" = 0))]
    pub tolerance: Option<Given<Decibels>>,
}

/// Something that grows with the level and is no figure of it.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Indication {
    /// What: lamps on the rim, a tone in the handset.
    pub title: Text,
    /// What it does as the signal grows: more lamps, a higher tone.
    pub stronger: Text,
    /// How long after a turn of the antenna it shows the change.
    #[schemars(extend("x-least" = 0))]
    pub lag: Option<Given<Milliseconds>>,
}

/// A state of the radio for aligning, which it does not serve in.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct AlignmentMode {
    /// How a crew brings it there.
    pub enter: Text,
    /// How a crew brings it back, and whether it leaves by itself.
    pub leave: Text,
}

/// A button that erases something when it is held.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct EraseButton {
    /// Which button.
    pub title: Text,
    /// How long it is held for that.
    #[schemars(extend("x-least" = 0))]
    pub held: Given<Milliseconds>,
    /// What is then gone.
    pub erases: Text,
}

/// What a crew aligns by: the best that its radio has.
#[derive(Debug, Clone, Copy)]
pub enum AlignedBy<'r> {
    /// A voltage.
    Voltage(&'r Readout),
    /// The level that the radio shows.
    Level(&'r ShownLevel),
    /// Something that only tells more from less.
    Indication(&'r Indication),
}

impl AlignedBy<'_> {
    /// How long a crew waits after each turn, where somebody says.
    #[must_use]
    pub fn lag(&self) -> Option<&Given<Milliseconds>> {
        match self {
            Self::Voltage(_) => None,
            Self::Level(shown) => shown.lag.as_ref(),
            Self::Indication(indication) => indication.lag.as_ref(),
        }
    }
}
