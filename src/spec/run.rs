//! What is in a cable run, and what it goes into.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Arrester, Radio, Ref, Text, Window};
use crate::units::{Amperes, Given, Volts, Watts};

/// The two cores of a feed.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Cores {
    /// The positive one: its colour or number.
    pub positive: Text,
    /// The negative one.
    pub negative: Text,
}

/// What protects a cable from too much current.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Fuse {
    /// Rated current.
    #[schemars(extend("x-least" = 0.01))]
    pub rated: Given<Amperes>,
    /// The pole it is in; never the earthed one.
    pub pole: Pole,
    /// The direct voltage it is rated for. One that is rated for alternating current alone does not break direct current.
    pub voltage: Option<Given<Volts>>,
}

/// A pole of a supply.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Pole {
    /// The positive one.
    Positive,
    /// The negative one.
    Negative,
}

impl Pole {
    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Positive => "positive",
            Self::Negative => "negative",
        }
    }
}

/// A port of a switch.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct SwitchPort {
    /// Which switch: `Switch in rack 2`.
    pub title: Text,
    /// Its port as it is labelled.
    pub port: Text,
}

/// What an outdoor cable goes into.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Entry {
    /// A building.
    Building,
    /// A cabinet in the weather.
    Cabinet,
    /// Nothing: both ends are outdoors, on one support or on supports that are bonded together.
    None,
}

/// A device fed through the radio: a radio model, or what its sheet says.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Load {
    /// A radio model, which says all below.
    pub radio: Option<Ref<Radio>>,
    /// What it is.
    pub title: Option<Text>,
    /// Most it ever draws.
    pub draw: Option<Given<Watts>>,
    /// Voltage at its port.
    pub voltage: Option<Window<Volts>>,
}

/// Shells of the plugs on a cable.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Plugs {
    /// Metal, in touch with the screen.
    #[default]
    Metal,
    /// Plastic.
    Plastic,
}

/// Where the screen of a cable is bonded to earth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum ScreenBond {
    /// At the radio and at the entry.
    #[default]
    BothEnds,
    /// At the radio only.
    RadioOnly,
    /// At the entry only.
    EntryOnly,
    /// Nowhere.
    Nowhere,
}

impl ScreenBond {
    /// Where, in words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::BothEnds => "at both ends",
            Self::RadioOnly => "at the radio only",
            Self::EntryOnly => "at the entry only",
            Self::Nowhere => "nowhere",
        }
    }
}

/// A surge arrester and where in the run it sits.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct ArresterUse {
    /// Arrester model.
    pub model: Ref<Arrester>,
    /// Where it sits.
    pub at: RunPlace,
}

/// A place along a cable run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum RunPlace {
    /// Within about a metre of the radio.
    Radio,
    /// Where the cable enters the building or the cabinet.
    Entry,
    /// At the other radio or device, where the cable enters nothing.
    FarEnd,
}
