//! The `network` document: what holds for every hop of a folder.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Date, Id, Kind, LicenceCode, Number, Text, WaiverTerms, Wind};
use crate::units::{
    Celsius, Decibels, Given, GramsPerCubicMetre, Hectopascals, MegabitsPerSecond, Metres, MillimetresPerHour, Percent,
    RainDepth, Volts,
};

/// A network: the folder of hops, and what holds for all of them.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Network {
    /// Always `network`.
    #[schemars(extend("const" = "network"))]
    pub kind: Kind,
    /// Short name, used in document numbers.
    pub id: Id,
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
    /// What every hop must reach unless it says otherwise.
    pub objectives: Objectives,
    /// Weather the design must stand.
    #[serde(default)]
    pub climate: Climate,
    /// Codes of practice in force.
    #[serde(default)]
    pub codes: Codes,
    /// Thresholds that are common practice and may be set here.
    #[serde(default)]
    pub limits: Limits,
    /// Severity of single rules, by rule name.
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

/// What every hop of the network must reach.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Objectives {
    /// Share of an average year in which the capacity below is there in both directions, rain counted.
    pub availability: Given<Percent>,
    /// Payload rate, each way, that the availability is asked for.
    pub capacity: Given<MegabitsPerSecond>,
    /// Least clear-sky margin above the receiver threshold of that capacity. Without it only the availability counts.
    #[schemars(extend("x-least" = 0))]
    pub fade_margin: Option<Given<Decibels>>,
    /// How far a measured level may lie from the predicted one, either way. Default 4 dB (common practice).
    #[schemars(extend("x-least" = 0))]
    pub acceptance_window: Option<Given<Decibels>>,
}

/// Weather the design must stand.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Climate {
    /// Rain rate exceeded for 0.01 % of an average year, one-minute integration (R0.01).
    pub rain_rate: Option<Given<MillimetresPerHour>>,
    /// Normals of the twelve months, from which the rain rate is computed where none is given (ITU-R P.837-7 Annex 1).
    pub rain_months: Option<RainMonths>,
    /// Folder with your own copy of the published map of rain rates, from that of the network file: `R001.TXT`,
    /// `Lat_R001.TXT` and `Lon_R001.TXT`. Read where neither a rain rate nor normals are given.
    pub rain_map: Option<Text>,
    /// Liquid water in the fog that the hop is to be seen in: 0.05 g/m3 where one sees 300 m, 0.5 g/m3 where 50 m.
    pub fog: Option<Given<GramsPerCubicMetre>>,
    /// Clear-air climate, for multipath fading of hops over 5 km and up to 45 GHz.
    pub refractivity: Option<Refractivity>,
    /// Mean rain height above sea level: that of the 0 °C isotherm and 360 m (ITU-R P.839-4).
    pub rain_height: Option<Given<Metres>>,
    /// Wind the hop must stand.
    pub wind: Option<Wind>,
    /// Air along the path, for gas loss. What is not given is that of the reference atmosphere.
    #[serde(default)]
    pub air: PathAir,
    /// Hottest air the cables see. Default 40 °C. Outdoor cable is taken 20 K hotter (sun on a black jacket, common
    /// practice).
    pub hottest_air: Option<Given<Celsius>>,
}

/// Normals of the twelve months, January first.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct RainMonths {
    /// Mean depth of all rain in the month, twelve of them.
    pub totals: Vec<Given<RainDepth>>,
    /// Mean temperature of the month two metres above the ground, twelve of them.
    pub temperatures: Vec<Given<Celsius>>,
}

/// Clear-air climate of the worst month, from the maps of ITU-R P.530.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Refractivity {
    /// Logarithm to base ten of the geoclimatic factor, `lg K`: a plain number such as `-4.2`.
    pub log_k: Number,
    /// Refractivity gradient near the ground, `dN75`, in N-units: a plain number such as `55`.
    pub dn_75: Number,
}

/// Air along the path, as measured or taken from climate tables for the height of the antennas.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct PathAir {
    /// Temperature.
    pub temperature: Option<Given<Celsius>>,
    /// Pressure as a barometer at the height of the path shows it, not reduced to sea level.
    pub pressure: Option<Given<Hectopascals>>,
    /// Relative humidity.
    pub humidity: Option<Given<Percent>>,
}

/// Codes of practice in force.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Codes {
    /// Code that sets the least grounding conductor of an antenna support. Without it the radio's own floor counts.
    pub grounding: Option<GroundingCode>,
    /// Codes that limit what the hops radiate, one for each band in use. Those count for a hop whose band holds its
    /// channel.
    #[serde(default)]
    pub licence: Vec<LicenceCode>,
}

/// A published code that sets the least grounding conductor of an antenna or mast.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum GroundingCode {
    /// 16 mm² copper, mast and antenna earth able to carry lightning.
    #[serde(rename = "IEC 60728-11")]
    Iec60728,
    /// 10 AWG copper, antenna discharge unit and mast grounding conductor.
    #[serde(rename = "NEC 810.21")]
    Nec810,
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
    /// Distance to keep from power lines beyond all that could fall. Default 3.05 m, ten feet (29 CFR 1926.1408, lines up to
    /// 50 kV, second-hand).
    #[schemars(extend("x-least" = 0))]
    pub power_line: Option<Given<Metres>>,
}

/// Severities for some of the files.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct RulesByPath {
    /// Files it holds for, from the folder of the network: `hops/temporary/*.yaml`, `**/lab-*.yaml`.
    pub paths: Text,
    /// Severity of single rules, by rule name.
    pub rules: BTreeMap<String, Setting>,
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

/// How the packs are printed.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Print {
    /// Sheet size. Default `a4`.
    pub paper: Option<Paper>,
}

/// A sheet size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Paper {
    /// 210 mm by 297 mm.
    #[default]
    A4,
    /// 8.5 in by 11 in.
    Letter,
}
