//! The `record` document: what a crew found and left at one end of a hop on one visit.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Check, Date, EndName, Hop, Id, Kind, Polarisation, Ref, Text};
use crate::units::{
    Celsius, Dbm, Degrees, Given, GramsPerCubicMetre, Hectopascals, MegabitsPerSecond, Megahertz, Metres,
    MillimetresPerHour, Minutes, Ohms, Percent, SquareMillimetres, Volts,
};

/// What was found and left at one end of a hop on one visit. `new record HOP/END` writes the form to fill in; its keys are
/// those on the record page of the install pack.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Record {
    /// Always `record`.
    #[schemars(extend("const" = "record"))]
    pub kind: Kind,
    /// Short name of this record.
    pub id: Id,
    /// The hop.
    pub hop: Ref<Hop>,
    /// Which end of it.
    pub end: EndName,
    /// The design the crew had in hand.
    #[serde(default)]
    pub built_from: BuiltFrom,
    /// Day of the visit.
    pub date: Option<Date>,
    /// Who was there.
    #[serde(default)]
    pub crew: Vec<Text>,
    /// Weather while reading.
    #[serde(default)]
    pub weather: Weather,
    /// What the level was read with.
    #[serde(default)]
    pub instrument: Instrument,
    /// Radio settings at this end while reading.
    #[serde(default)]
    pub settings: Settings,
    /// Read at the peak, before the screws were locked.
    #[serde(default)]
    pub before_locking: Reading,
    /// Read after the final torque.
    #[serde(default)]
    pub after_locking: Reading,
    /// True bearing as found or left.
    pub bearing: Option<Given<Degrees>>,
    /// Tilt as found or left, up positive.
    pub tilt: Option<Given<Degrees>>,
    /// Antenna centre above the ground of the site, as found or left.
    pub height: Option<Given<Metres>>,
    /// Licence or registration number as it is kept at the site, quoted.
    pub licence: Option<Text>,
    /// Cable runs, by port.
    #[serde(default)]
    pub runs: Vec<RunRecord>,
    /// Grounding as found or left.
    #[serde(default)]
    pub grounding: GroundingRecord,
    /// Test of the service into this end, in the state the hop is left in.
    #[serde(default)]
    pub service: ServiceTest,
    /// Serial numbers.
    #[serde(default)]
    pub serials: Serials,
    /// Checks that were done, by the ids on the record page.
    #[serde(default)]
    pub checks: Vec<Check>,
    /// Photos, and what each shows.
    #[serde(default)]
    pub photos: Vec<Photo>,
    /// What is not as the pack says.
    #[serde(default)]
    pub deviations: Vec<Deviation>,
    /// What was decided. Without it this is a form still being filled in.
    pub decision: Option<Decision>,
}

/// The design a crew had in hand, as every page of a pack says at its foot.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct BuiltFrom {
    /// Revision, quoted.
    pub revision: Option<Text>,
    /// Source mark, quoted: sixteen digits that change when any source of the design changes.
    pub mark: Option<Text>,
}

/// Weather along the path while reading.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Weather {
    /// What fell or stood in the air.
    pub sky: Option<Sky>,
    /// Rain rate, if somebody measured it. It is then taken to fall over all of the path.
    pub rain_rate: Option<Given<MillimetresPerHour>>,
    /// Liquid water in the fog, if somebody can tell: 0.05 g/m3 where one sees 300 m, 0.5 g/m3 where 50 m.
    pub fog: Option<Given<GramsPerCubicMetre>>,
    /// Air temperature.
    pub temperature: Option<Given<Celsius>>,
    /// Pressure as a barometer at the height of the path shows it, not reduced to sea level.
    pub pressure: Option<Given<Hectopascals>>,
    /// Relative humidity.
    pub humidity: Option<Given<Percent>>,
}

/// What fell or stood in the air.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Sky {
    /// Nothing.
    Dry,
    /// Fog or low cloud.
    Fog,
    /// Rain.
    Rain,
    /// Snow, dry or wet.
    Snow,
}

impl Sky {
    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Dry => "dry",
            Self::Fog => "fog",
            Self::Rain => "rain",
            Self::Snow => "snow",
        }
    }
}

/// What the level was read with.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Instrument {
    /// Maker and model.
    pub title: Option<Text>,
    /// Serial number, quoted.
    pub serial: Option<Text>,
    /// Day its calibration runs out.
    pub calibration_due: Option<Date>,
}

/// Radio settings at one end while reading.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Settings {
    /// Power at the antenna port.
    pub transmit_power: Option<Given<Dbm>>,
    /// Bandwidth.
    pub bandwidth: Option<Given<Megahertz>>,
    /// Modulation state of both radios while reading, as the radio names it. With it, a power back-off is counted.
    pub state: Option<Text>,
    /// Polarisation as mounted.
    pub polarisation: Option<Polarisation>,
    /// Whether automatic power control was on while reading.
    pub automatic_power_control: Option<bool>,
}

/// A reading of the received level: in volts at the read-out port, in decibels, or both. Volts count before decibels.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Reading {
    /// What the voltmeter showed at the read-out port.
    #[schemars(extend("x-least" = -20, "x-most" = 20))]
    pub meter: Option<Given<Volts>>,
    /// What the radio itself said.
    #[schemars(extend("x-least" = -150, "x-most" = 10))]
    pub level: Option<Given<Dbm>>,
}

/// One cable run as found or left.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct RunRecord {
    /// Port of the radio it ends at; one of the runs of the hop.
    pub port: Id,
    /// Voltage at the radio with the radio running.
    pub voltage: Option<Given<Volts>>,
    /// What the test of all pairs and the screen said.
    pub cable_test: Option<TestResult>,
}

/// How a test went.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum TestResult {
    /// Sound.
    Passed,
    /// Not sound.
    Failed,
}

impl TestResult {
    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Passed => "passed",
            Self::Failed => "failed",
        }
    }
}

/// Grounding as found or left.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct GroundingRecord {
    /// Cross-section of the conductor from the radio's ground terminal, of the metal that was designed.
    pub conductor: Option<Given<SquareMillimetres>>,
    /// Resistance of the earth it bonds to.
    pub resistance: Option<Given<Ohms>>,
    /// How that was measured: fall of potential, clamp.
    pub method: Option<Text>,
}

/// Test of the service into one end: what the hop is for, carried over it.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct ServiceTest {
    /// Modulation state that the radio reached, as it names it.
    pub state: Option<Text>,
    /// Rate that was received without loss.
    pub rate: Option<Given<MegabitsPerSecond>>,
    /// Frames or blocks that were lost or wrong while that rate ran.
    pub errors: Option<u32>,
    /// How long it ran.
    pub duration: Option<Given<Minutes>>,
}

/// Serial numbers, quoted.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Serials {
    /// Of the radio.
    pub radio: Option<Text>,
    /// Of the antenna.
    pub antenna: Option<Text>,
}

/// A photo.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Photo {
    /// Name of its file.
    pub file: Text,
    /// What it shows.
    pub shows: Text,
}

/// Something that is not as the pack says.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Deviation {
    /// What is different, and why.
    pub what: Text,
    /// Where it was agreed: number, letter, name and day.
    pub concession: Option<Text>,
}

/// What was decided on the end.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Decision {
    /// The decision.
    pub verdict: Verdict,
    /// Who decided.
    pub by: Text,
}

/// A decision on an end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Verdict {
    /// As it is.
    Accepted,
    /// With deviations that were agreed to.
    AcceptedWithConcession,
    /// Work has to be done again.
    Rejected,
}

impl Verdict {
    /// As people say it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Accepted => "accepted",
            Self::AcceptedWithConcession => "accepted with concession",
            Self::Rejected => "rejected",
        }
    }
}
