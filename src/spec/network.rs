//! The `network` document: what holds for every hop of a folder.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::Deserialize;

use super::climate::Climate;
use super::objectives::Objectives;
use super::path::Terrain;
use super::{Date, Defaults, Id, Kind, LeastVersion, LicenceCode, Number, Print, Text, WaiverTerms};
use crate::units::{Decibels, Degrees, Given, Hours, Kelvins, Metres, Millimetres, Minutes, Ohms, Percent, Volts};

/// A network: the folder of hops, and what holds for all of them.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Network {
    /// Always `network`.
    #[schemars(extend("const" = "network"))]
    pub kind: Kind,
    /// Short name, used in document numbers.
    pub id: Id,
    /// Least version of hopwright that this network is written for, quoted: `">=0.1"`. An older program says so, and nothing
    /// else.
    pub requires: Option<LeastVersion>,
    /// Name as people say it.
    pub title: Text,
    /// Legal owner of the documents, printed in every title block.
    pub owner: Text,
    /// Day the design stands for. The magnetic declination and the date on the packs are those of this day.
    pub date: Date,
    /// Revision mark printed on every page.
    pub revision: Option<Text>,
    /// Who drew the design up.
    pub creator: Option<Text>,
    /// Who approved it for issue. Packs are marked as drafts until somebody is named here.
    pub approver: Option<Text>,
    /// Earlier issues and this one, oldest first: what was changed in each.
    #[serde(default)]
    pub revisions: Vec<Revision>,
    /// What every hop must reach unless it says otherwise.
    pub objectives: Objectives,
    /// Weather the design must stand.
    #[serde(default)]
    pub climate: Climate,
    /// Tiles of ground heights, for hops that bring no profile of their own.
    pub terrain: Option<Terrain>,
    /// Mean time until failed equipment is back: notice, travel and repair. With it, and `mean_time_between_failures` of the
    /// radios, equipment counts in the outage.
    #[schemars(extend("x-least" = 0))]
    pub mean_time_to_restore: Option<Given<Hours>>,
    /// Codes of practice in force.
    #[serde(default)]
    pub codes: Codes,
    /// Thresholds that are common practice and may be set here.
    #[serde(default)]
    pub limits: Limits,
    /// What ends, runs and groundings of this network are like where nothing else says so: not they themselves, nor a template, nor
    /// the site or the support they are at.
    pub defaults: Option<Defaults>,
    /// Folders of documents that are shared with other networks, from the folder of this one: `../../equipment`. They lie in the
    /// same repository and hold sites, equipment and neighbours.
    #[serde(default)]
    pub libraries: Vec<Text>,
    /// Files and folders of this network that are not read, as patterns in the manner of `.gitignore`, which counts too.
    #[serde(default)]
    pub exclude: Vec<Text>,
    /// Severity of single rules, by rule name. What protects people, what the law allows and what says that something was not
    /// judged is never lowered or switched off; `explain RULE` says which rules that are.
    #[serde(default)]
    pub rules: BTreeMap<String, Setting>,
    /// Severities that hold only for some files; the last one that fits a finding counts.
    #[serde(default)]
    pub rules_by_path: Vec<RulesByPath>,
    /// How long waivers may hold.
    #[serde(default)]
    pub waivers: WaiverTerms,
    /// How the packs are printed.
    #[serde(default)]
    pub print: Print,
}

/// Codes of practice in force.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Codes {
    /// Code that sets the least grounding conductor of an antenna support. Without it the radio's own floor counts.
    pub grounding: Option<GroundingCode>,
    /// Rule that sets the distance to power lines by their voltage. Default 29 CFR 1926.1408.
    pub power_lines: Option<PowerLineCode>,
    /// Codes that limit what the hops radiate, one for each band in use. Those count for a hop whose band holds its
    /// channel.
    #[serde(default)]
    pub licence: Vec<LicenceCode>,
}

/// A published code that sets the least grounding conductor of an antenna or mast.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum GroundingCode {
    /// Mast and antenna earth able to carry lightning: 16 mm² copper, 25 mm² aluminium, 50 mm² steel.
    #[serde(rename = "IEC 60728-11")]
    Iec60728,
    /// Grounding conductor of mast and antenna discharge unit: 10 AWG copper, 8 AWG aluminium, 17 AWG copper-clad steel.
    #[serde(rename = "NEC 810.21")]
    Nec810,
}

/// A published rule that sets distances to power lines for people who are not trained on them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum PowerLineCode {
    /// United States, table A: 10 ft up to 50 kV, 15 to 200, 20 to 350, 25 to 500, 35 to 750, 45 to 1000; 50 ft unknown.
    #[serde(rename = "29 CFR 1926.1408")]
    Cfr1926,
    /// Germany, table 5: 1 m up to 1 kV, 3 to 110, 4 to 220, 5 to 380 and unknown.
    #[serde(rename = "DGUV 203-060")]
    Dguv203,
    /// South Australia: 3 m up to 33 kV, 4 to 66, 5 to 132, 6 to 275 and unknown.
    #[serde(rename = "SA regulation 64")]
    Sa64,
}

/// How much of the first Fresnel zone a path keeps free: at the median `k` of 4/3, and at the low `k` of the worst month.
/// Those of ITU-R P.530-18 §2.2.2.1 are from memory.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum ClearanceCriteria {
    /// 1.0 F1, and 0.3 F1 at the low `k`: ground, trees or roofs over some part of the path.
    #[serde(rename = "P.530-18 temperate")]
    Temperate,
    /// 1.0 F1, and grazing at the low `k`: a single sharp obstacle, and nothing else near the line.
    #[serde(rename = "P.530-18 temperate isolated")]
    TemperateIsolated,
    /// 1.0 F1, and 0.6 F1 at the low `k` over 30 km; shorter paths as in a temperate climate.
    #[serde(rename = "P.530-18 tropical")]
    Tropical,
    /// The same with a single sharp obstacle: shorter paths may graze it at the low `k`.
    #[serde(rename = "P.530-18 tropical isolated")]
    TropicalIsolated,
    /// 0.6 F1, so that obstacles cost no level in ordinary air, and grazing at the low `k` (common practice on short hops, no
    /// source).
    #[serde(rename = "free space 0.6")]
    FreeSpace,
}

impl ClearanceCriteria {
    /// All of them.
    pub const ALL: [Self; 5] =
        [Self::FreeSpace, Self::TemperateIsolated, Self::Temperate, Self::TropicalIsolated, Self::Tropical];

    /// As written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::FreeSpace => "free space 0.6",
            Self::TemperateIsolated => "P.530-18 temperate isolated",
            Self::Temperate => "P.530-18 temperate",
            Self::TropicalIsolated => "P.530-18 tropical isolated",
            Self::Tropical => "P.530-18 tropical",
        }
    }

    /// How much each asks for where the others may ask for something else: at the median `k`, of short paths at the low one,
    /// of long paths there. One that asks for no less anywhere lets through no more.
    #[must_use]
    pub const fn ranks(self) -> [u8; 3] {
        match self {
            Self::FreeSpace => [0, 0, 0],
            Self::TemperateIsolated => [1, 0, 0],
            Self::Temperate => [1, 1, 1],
            Self::TropicalIsolated => [1, 0, 2],
            Self::Tropical => [1, 1, 2],
        }
    }
}

/// Thresholds that are common practice.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Limits {
    /// Voltage to keep in hand above the radio's least input. Default 2 V (common practice).
    #[schemars(extend("x-least" = 0))]
    pub voltage_reserve: Option<Given<Volts>>,
    /// What sway in the operating wind may cost at one end. Default 1 dB (common practice).
    #[schemars(extend("x-least" = 0))]
    pub wind_loss: Option<Given<Decibels>>,
    /// Least distance to keep from power lines beyond all that could fall, whatever their voltage. What `codes.power_lines`
    /// asks for is kept in any case.
    #[schemars(extend("x-least" = 0))]
    pub power_line: Option<Given<Metres>>,
    /// How much the level may change when the screws are locked. Default 1 dB (common practice).
    #[schemars(extend("x-least" = 0))]
    pub locking_loss: Option<Given<Decibels>>,
    /// How far the levels read at the two ends may disagree once the predicted ones are taken off. Default 3 dB (common
    /// practice).
    #[schemars(extend("x-least" = 0))]
    pub reciprocity: Option<Given<Decibels>>,
    /// How far the bearing of an antenna as found may lie from the designed one. Default 3° (common practice).
    #[schemars(extend("x-least" = 0))]
    pub found_bearing: Option<Given<Degrees>>,
    /// The same for its tilt. Default 0.5° (common practice).
    #[schemars(extend("x-least" = 0))]
    pub found_tilt: Option<Given<Degrees>>,
    /// The same for its height. Default 0.5 m (common practice).
    #[schemars(extend("x-least" = 0))]
    pub found_height: Option<Given<Metres>>,
    /// Shortest service test that counts for acceptance. Default 10 min (common practice).
    #[schemars(extend("x-least" = 0))]
    pub service_test: Option<Given<Minutes>>,
    /// How far the voltage found at a radio may lie below the predicted one, which is that of the worst case. Default 1 V
    /// (common practice).
    #[schemars(extend("x-least" = 0))]
    pub voltage_drop: Option<Given<Volts>>,
    /// Voltage at which a radio that states no `start` has switched on. Default 42 V (IEEE 802.3, from memory).
    #[schemars(extend("x-least" = 0))]
    pub start_voltage: Option<Given<Volts>>,
    /// Resistance of one mated contact of a plug, aged. Default 50 mΩ (common practice).
    pub contact_resistance: Option<Given<Ohms>>,
    /// How much hotter than the air a black jacket gets in the sun. Default 20 K (common practice).
    pub sun_on_jacket: Option<Given<Kelvins>>,
    /// How much hotter than the air a radio gets in the sun: 0 K where its window of temperatures counts the sun. Without it
    /// a window that ends where the hottest air does is too small.
    pub sun_on_radio: Option<Given<Kelvins>>,
    /// Longest channel of Ethernet, counted in cable at 20 °C. Default 100 m (hot cable by ANSI/TIA-568, from memory).
    #[schemars(extend("x-least" = 0))]
    pub hot_length: Option<Given<Metres>>,
    /// How far the diameter of a cable stays inside the window of its gland insert. Default 0.2 mm (common practice).
    pub gland_reserve: Option<Given<Millimetres>>,
    /// How far a drip loop hangs below the port. Default 150 mm (common practice).
    pub drip_loop: Option<Given<Millimetres>>,
    /// Longest grounding conductor. Default 6 m, or the height of the antenna where that is more (common practice).
    #[schemars(extend("x-least" = 0))]
    pub ground_length: Option<Given<Metres>>,
    /// Tightest bend of a grounding conductor. Default 200 mm (common practice).
    pub ground_bend: Option<Given<Millimetres>>,
    /// Least room between two antennas on one support. Default 100 mm (common practice).
    pub antenna_gap: Option<Given<Millimetres>>,
    /// Cable and wire to take beyond the length laid. Default 10 % (common practice).
    pub spare: Option<Given<Percent>>,
    /// By which criteria paths are cleared. Default `P.530-18 temperate`; `clearance` and `low_k_clearance` stand above it.
    pub clearance_criteria: Option<ClearanceCriteria>,
    /// Least clearance of the path at the median `k` of 4/3, in radii of the first Fresnel zone: a plain number. Without it
    /// that of `clearance_criteria`. Below 0.6 an obstacle costs level (ITU-R P.526-15 §2).
    pub clearance: Option<Number>,
    /// The same at the low `k`, that of `climate.low_k` or of the length of the path. Without it that of
    /// `clearance_criteria`.
    pub low_k_clearance: Option<Number>,
    /// How much interference may raise the thresholds of a receiver. Default 1 dB (common practice).
    #[schemars(extend("x-least" = 0))]
    pub threshold_degradation: Option<Given<Decibels>>,
    /// How far over the noise of a neighbour's receiver one sender of this network may come through. Default -10 dB (common
    /// practice).
    pub neighbour_disturbance: Option<Given<Decibels>>,
    /// Height of what a profile may miss between two points that lie further apart than the Fresnel zone is wide.
    /// Default 10 m: a tree or a house (common practice).
    #[schemars(extend("x-least" = 0))]
    pub unseen_height: Option<Given<Metres>>,
}

/// Severities for some of the files.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct RulesByPath {
    /// Files it holds for, from the folder of the network: `hops/temporary/*.yaml`, `**/lab-*.yaml`.
    pub paths: Text,
    /// Files and folders of this network that are not read, as patterns in the manner of `.gitignore`, which counts too.
    #[serde(default)]
    pub exclude: Vec<Text>,
    /// Severity of single rules, by rule name.
    pub rules: BTreeMap<String, Setting>,
}

/// One issue of the design.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Revision {
    /// Its mark.
    pub revision: Text,
    /// The day it was issued.
    pub date: Date,
    /// What was changed.
    pub change: Text,
    /// Who drew it up.
    pub creator: Option<Text>,
    /// Who approved it.
    pub approver: Option<Text>,
}

/// Severity given to a rule in place of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Setting {
    /// Not judged.
    Off,
    /// Worth knowing.
    Advice,
    /// Likely to hurt.
    Warning,
    /// Must not be built.
    Error,
}
