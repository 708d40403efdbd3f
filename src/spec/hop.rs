//! The `hop` document: two ends and the channel between them.

use schemars::JsonSchema;
use serde::Deserialize;

use super::network::Climate;
use super::path::HopPath;
use super::{Antenna, Arrester, Bracket, Cable, Id, Kind, Radio, Ref, Site, Supply, Text};
use crate::units::{Dbm, Decibels, Gigahertz, Given, MegabitsPerSecond, Megahertz, Metres, Percent, SquareMillimetres};

/// A point-to-point radio hop.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Hop {
    /// Always `hop`.
    #[schemars(extend("const" = "hop"))]
    pub kind: Kind,
    /// Short name.
    pub id: Id,
    /// Name as people say it.
    pub title: Option<Text>,
    /// Frequencies, bandwidth and polarisation.
    pub channel: Channel,
    /// Where this hop asks for more or less than its network.
    #[serde(default)]
    pub objectives: HopObjectives,
    /// Where the weather of this hop differs from that of its network.
    #[serde(default)]
    pub climate: Climate,
    /// Ground and obstacles between the ends.
    #[serde(default)]
    pub path: HopPath,
    /// The two ends.
    pub ends: Ends,
    /// Anything a reviewer or a crew should read.
    #[serde(default)]
    pub notes: Vec<Text>,
}

/// What is sent, where in the spectrum.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Channel {
    /// Centre frequency that end `a` transmits on.
    pub a_to_b: Given<Gigahertz>,
    /// Centre frequency that end `b` transmits on. The same as `a_to_b` where both ends take turns on one frequency.
    pub b_to_a: Given<Gigahertz>,
    /// Occupied bandwidth, each way.
    pub bandwidth: Given<Megahertz>,
    /// Polarisation, the same at both ends.
    pub polarisation: Polarisation,
}

/// Polarisation of the radiated field.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Polarisation {
    /// Electric field level.
    Horizontal,
    /// Electric field upright.
    Vertical,
}

impl Polarisation {
    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Horizontal => "horizontal",
            Self::Vertical => "vertical",
        }
    }
}

/// Where a hop asks for more or less than its network.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct HopObjectives {
    /// In place of the network's.
    pub availability: Option<Given<Percent>>,
    /// In place of the network's.
    pub capacity: Option<Given<MegabitsPerSecond>>,
    /// In place of the network's.
    #[schemars(extend("x-least" = 0))]
    pub fade_margin: Option<Given<Decibels>>,
    /// In place of the network's.
    #[schemars(extend("x-least" = 0))]
    pub acceptance_window: Option<Given<Decibels>>,
}

/// The two ends of a hop.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Ends {
    /// The end that transmits on `channel.a_to_b`.
    pub a: End,
    /// The end that transmits on `channel.b_to_a`.
    pub b: End,
}

/// Everything that is mounted at one end.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct End {
    /// Where.
    pub site: Ref<Site>,
    /// What it is mounted on: one of the site's supports.
    pub support: Id,
    /// Antenna centre above the ground of the site.
    pub height: Given<Metres>,
    /// Radio model.
    pub radio: Ref<Radio>,
    /// Which half of a duplex pair this radio is, by the name the radio gives it. Needed when it has more than one.
    pub half: Option<Id>,
    /// Antenna model.
    pub antenna: Ref<Antenna>,
    /// Power at the antenna port, as set.
    pub transmit_power: Given<Dbm>,
    /// Bracket and which way up.
    pub bracket: BracketUse,
    /// Cable runs, one for each port in use.
    pub runs: Vec<Run>,
    /// Grounding of the radio.
    #[serde(default)]
    pub grounding: Grounding,
}

/// A bracket and how it is put together.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct BracketUse {
    /// Bracket model.
    pub model: Ref<Bracket>,
    /// Which way up. Default `upright`.
    #[serde(default)]
    pub orientation: Orientation,
    /// Whether the extension plate is fitted. Default `false`.
    #[serde(default)]
    pub plate: bool,
}

/// Which way up a bracket is mounted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Orientation {
    /// As its sheet draws it.
    #[default]
    Upright,
    /// Upside down.
    Inverted,
}

impl Orientation {
    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Upright => "upright",
            Self::Inverted => "inverted",
        }
    }
}

/// One cable from the building to a port of the radio.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Run {
    /// Port of the radio it ends at.
    pub port: Id,
    /// What it is there for.
    pub carries: Vec<Service>,
    /// What feeds it, where it carries power.
    pub supply: Option<Ref<Supply>>,
    /// Cable type.
    pub cable: Ref<Cable>,
    /// Length outdoors, from the radio to the building.
    #[schemars(extend("x-least" = 0))]
    pub outdoor: Given<Metres>,
    /// Length indoors, from the entry to the supply, cords included.
    #[schemars(extend("x-least" = 0))]
    pub indoor: Option<Given<Metres>>,
    /// Surge arresters in the run.
    #[serde(default)]
    pub arresters: Vec<ArresterUse>,
}

/// What a run is there for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Service {
    /// Traffic.
    Data,
    /// Power to the radio.
    Power,
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
    /// Where the cable enters the building.
    Entry,
}

/// Grounding of the radio at one end.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Grounding {
    /// Cross-section of the copper conductor from the radio's ground terminal.
    pub conductor: Option<Given<SquareMillimetres>>,
    /// Its length.
    #[schemars(extend("x-least" = 0))]
    pub length: Option<Given<Metres>>,
    /// Earth point of the site it bonds to.
    pub bonds_to: Option<Id>,
}
