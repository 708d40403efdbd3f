//! The `hop` document: two ends and the channel between them.

use schemars::JsonSchema;
use serde::Deserialize;

use super::climate::Climate;
use super::objectives::HopObjectives;
use super::partly::completed;
use super::path::HopPath;
use super::{
    Antenna, ArresterUse, Bracket, Cable, Carried, Cores, EndLightning, EndName, Entry, FeederUse, FibreRun, Fuse,
    HopLicence, Id, Kind, Load, Plugs, Radio, Ref, ScreenBond, Site, Supply, SwitchPort, Template, Text, Way,
};
use crate::units::{
    Dbm, Decibels, Degrees, Gigahertz, Given, MegabitsPerSecond, Megahertz, Metres, Millimetres, SquareMillimetres,
};

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
    /// What the licence of this hop says, and the codes it falls under where they differ from the network's.
    #[serde(default)]
    pub licence: HopLicence,
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
    /// Polarisation, the same at both ends; `dual` for two carriers of crossed polarisations on this one channel.
    pub polarisation: Polarisation,
}

impl Channel {
    /// The centre frequency of a way.
    #[must_use]
    pub const fn frequency(&self, way: Way) -> &Given<Gigahertz> {
        match way {
            Way::AToB => &self.a_to_b,
            Way::BToA => &self.b_to_a,
        }
    }
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
    /// Both at once on one channel, a carrier each: twice the capacity of a modulation state, rain as it fades the
    /// horizontal one, and each carrier what the antennas, the air and rain let over of the other. Powers are those of a
    /// carrier.
    Dual,
}

impl Polarisation {
    /// What all carriers of the channel carry together, of the capacity of a modulation state.
    #[must_use]
    pub fn carries(self, one: MegabitsPerSecond) -> MegabitsPerSecond {
        MegabitsPerSecond(one.0 * f64::from(self.carriers()))
    }

    /// How many carriers share the channel.
    #[must_use]
    pub const fn carriers(self) -> u8 {
        match self {
            Self::Horizontal | Self::Vertical => 1,
            Self::Dual => 2,
        }
    }

    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Horizontal => "horizontal",
            Self::Vertical => "vertical",
            Self::Dual => "dual",
        }
    }
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

impl std::ops::Index<EndName> for Ends {
    type Output = End;

    fn index(&self, end: EndName) -> &End {
        match end {
            EndName::A => &self.a,
            EndName::B => &self.b,
        }
    }
}

/// Everything that is mounted at one end.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(transform = completed)]
pub struct End {
    /// Template whose `end` says what this one does not write.
    pub like: Option<Ref<Template>>,
    /// Where.
    #[schemars(extend("x-own" = true))]
    pub site: Ref<Site>,
    /// What it is mounted on: one of the site's supports.
    #[schemars(extend("x-own" = true))]
    pub support: Id,
    /// Antenna centre above the ground of the site.
    #[schemars(extend("x-most" = 1000, "x-own" = true))]
    pub height: Given<Metres>,
    /// Radio model.
    pub radio: Ref<Radio>,
    /// Which half of a duplex pair this radio is, by the name the radio gives it. Needed when it has more than one.
    pub half: Option<Id>,
    /// Antenna model.
    pub antenna: Ref<Antenna>,
    /// Power at the antenna port of the radio, as set. What lies between that port and the antenna stands under `losses`.
    pub transmit_power: Given<Dbm>,
    /// Coaxial cable or waveguide from the radio to the antenna. Its loss counts at both frequencies of the hop as its sheet says.
    pub feeder: Option<FeederUse>,
    /// What else lies between the radio and the antenna, and what it takes of the level on its way out and in: coupler, connectors,
    /// filters, as their sheets say. With an unequal coupler each radio names its own branch. None where the antenna sits on the
    /// radio. Thresholds and overload are those at the port of the radio.
    #[serde(default)]
    pub losses: Vec<PortLoss>,
    /// Level at the far receiver that automatic power control of this end is set to hold, by lowering its power. Without
    /// it full power is sent in all weather. Margins are those of full power: in a fade the control gives it back.
    pub held_level: Option<Given<Dbm>>,
    /// How far the aim may be off when all is locked. What that costs comes off the margin; none if not given.
    #[schemars(extend("x-least" = 0))]
    pub aim_error: Option<Given<Degrees>>,
    /// How much interference from senders that are neither in this network nor among its neighbours raises the thresholds of
    /// the receiver here. What it hears from those that are is computed and added. Both come off the margin.
    #[schemars(extend("x-least" = 0))]
    pub threshold_degradation: Option<Given<Decibels>>,
    /// Bracket and which way up.
    pub bracket: BracketUse,
    /// Cable runs, one for each port in use.
    pub runs: Vec<Run>,
    /// Runs of fibre.
    #[serde(default)]
    pub fibre_runs: Vec<FibreRun>,
    /// Grounding of the radio.
    #[serde(default)]
    pub grounding: Grounding,
    /// How the antenna stands to the lightning protection system of its structure, as others state it.
    #[serde(default)]
    pub lightning: EndLightning,
}

/// Something between a radio and its antenna.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct PortLoss {
    /// What it is: `Flexible guide 0.9 m`, `Coupler, main branch`.
    pub title: Text,
    /// What it takes of the level, either way.
    #[schemars(extend("x-least" = 0))]
    pub loss: Given<Decibels>,
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

/// One cable to a port of the radio: from the building, or from another radio or device.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(transform = completed)]
pub struct Run {
    /// Template whose `run` says what this one does not write.
    pub like: Option<Ref<Template>>,
    /// Port of the radio it ends at.
    pub port: Id,
    /// What it is there for.
    pub carries: Vec<Carried>,
    /// What feeds it, where it carries power.
    pub supply: Option<Ref<Supply>>,
    /// Name of that supply at the site, where one supply feeds several runs: runs here that name the same unit of the same
    /// model hang on it together.
    pub supply_unit: Option<Id>,
    /// Which of its ports feeds this run.
    pub supply_port: Option<Id>,
    /// Where that supply stands and takes its power: one of the site's power points.
    pub power_point: Option<Id>,
    /// What it feeds, where it carries `power-out` to something that is no radio of this network.
    #[serde(default)]
    pub feeds: Load,
    /// The port of another radio at this site that it leads to. It is written at one of the two only: at the one that hands power
    /// on, where it carries `power-out`; that radio then needs no supply of its own.
    pub ends_at: Option<RadioPort>,
    /// The port of the switch that it leads to.
    pub switch: Option<SwitchPort>,
    /// Cable type.
    pub cable: Ref<Cable>,
    /// Which core is which, where it is fed by two poles: so that a crew finds it when they are reversed.
    pub cores: Option<Cores>,
    /// The fuse or breaker that protects its cable, at the supply.
    pub fuse: Option<Fuse>,
    /// What it goes into at the other end. Default `building`, and `none` where it leads to another radio.
    pub entry: Option<Entry>,
    /// Length outdoors, from the radio to the entry.
    #[schemars(extend("x-least" = 0))]
    pub outdoor: Given<Metres>,
    /// Length indoors, from the entry to the supply, cords included.
    #[schemars(extend("x-least" = 0))]
    pub indoor: Option<Given<Metres>>,
    /// Surge arresters in the run.
    #[serde(default)]
    pub arresters: Vec<ArresterUse>,
    /// Shells of the plugs. Default `metal`.
    #[serde(default)]
    pub plugs: Plugs,
    /// Where the screen of the cable is bonded. Default `both-ends`.
    #[serde(default)]
    pub screen: ScreenBond,
    /// Earth point of the site at the far end of the outdoor cable, where the entry arrester and the screen bond. Default
    /// that of the radio.
    pub entry_earth: Option<Id>,
}

impl Run {
    /// What it goes into at the other end.
    #[must_use]
    pub fn enters(&self) -> Entry {
        self.entry.unwrap_or(if self.ends_at.is_some() { Entry::None } else { Entry::Building })
    }

    /// Whether power goes over it from this radio to another one.
    #[must_use]
    pub fn powers_a_radio(&self) -> bool {
        self.ends_at.is_some() && self.carries.contains(&Carried::PowerOut)
    }
}

/// A port of a radio of this network.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct RadioPort {
    /// Its hop.
    pub hop: Ref<Hop>,
    /// The end of that hop.
    pub end: EndName,
    /// The port of the radio there.
    pub port: Id,
}

/// Grounding of the radio at one end.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, transform = completed)]
pub struct Grounding {
    /// Template whose `grounding` says what this one does not write.
    pub like: Option<Ref<Template>>,
    /// Cross-section of the conductor from the radio's ground terminal.
    pub conductor: Option<Given<SquareMillimetres>>,
    /// What it is made of. Default `copper`.
    #[serde(default)]
    pub material: GroundMetal,
    /// Its length.
    #[schemars(extend("x-least" = 0))]
    pub length: Option<Given<Metres>>,
    /// Radius of its tightest bend, if it cannot be led straight.
    pub tightest_bend: Option<Given<Millimetres>>,
    /// Earth point of the site it bonds to.
    pub bonds_to: Option<Id>,
}

/// Metal of a grounding conductor.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum GroundMetal {
    /// Copper.
    #[default]
    Copper,
    /// Aluminium.
    Aluminium,
    /// Steel with a skin of copper.
    CopperCladSteel,
    /// Galvanised steel.
    Steel,
}

impl GroundMetal {
    /// The words for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Copper => "copper",
            Self::Aluminium => "aluminium",
            Self::CopperCladSteel => "copper-clad steel",
            Self::Steel => "galvanised steel",
        }
    }
}
