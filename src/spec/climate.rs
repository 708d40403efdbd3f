//! The weather a design must stand: of a network, and of a hop where it differs.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Ice, Number, Text, Wind};
use crate::units::{
    Celsius, Decibels, Given, GramsPerCubicMetre, Hectopascals, Metres, MillimetresPerHour, Percent, RainDepth,
};

/// Weather the design must stand.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Climate {
    /// Rain rate exceeded for 0.01 % of an average year, one-minute integration (R0.01).
    pub rain_rate: Option<Given<MillimetresPerHour>>,
    /// How far that rate may be off, either way, as a share of it. What it does to the availability stands beside it.
    pub rain_rate_tolerance: Option<Given<Percent>>,
    /// Normals of the twelve months, from which the rain rate is computed where none is given (ITU-R P.837-7 Annex 1).
    pub rain_months: Option<RainMonths>,
    /// Folder with your own copy of the published map of rain rates, from that of the network file: `R001.TXT`,
    /// `Lat_R001.TXT` and `Lon_R001.TXT`. Read where neither a rain rate nor normals are given. It lies in the repository;
    /// one that lies elsewhere is named by `--rain-map`.
    pub rain_map: Option<Text>,
    /// Liquid water in the fog that the hop is to be seen in: 0.05 g/m3 where one sees 300 m, 0.5 g/m3 where 50 m.
    pub fog: Option<Given<GramsPerCubicMetre>>,
    /// Clear-air climate, for multipath fading of hops over 5 km and up to 45 GHz.
    pub refractivity: Option<Refractivity>,
    /// How far above that of a clear sky layers of air may lift the level for a while, on hops over 5 km: in such an
    /// up-fade no receiver may be overloaded. 10 dB are common practice on long hops (no source); none if not given.
    #[schemars(extend("x-least" = 0))]
    pub up_fade: Option<Given<Decibels>>,
    /// Effective Earth radius factor, `k`, exceeded for 99.9 % of the worst month: a plain number such as `0.7`. Without it
    /// that of the length of the path, 0.57 up to 20 km (ITU-R P.530 §2.2.2, closed form from memory). The hop must be cleared at
    /// this `k` too, by `limits.clearance_criteria`.
    pub low_k: Option<Number>,
    /// Mean rain height above sea level: that of the 0 °C isotherm and 360 m (ITU-R P.839-4).
    pub rain_height: Option<Given<Metres>>,
    /// Wind the hop must stand.
    pub wind: Option<Wind>,
    /// Ice that grows on antenna, radio and support. None if not given.
    pub ice: Option<Ice>,
    /// Air along the path, for gas loss. What is not given is that of the reference atmosphere.
    #[serde(default)]
    pub air: PathAir,
    /// Coldest air the equipment sees. Without it no cold limit is judged.
    #[schemars(extend("x-least" = -90, "x-most" = 40))]
    pub coldest_air: Option<Given<Celsius>>,
    /// Hottest air the cables see. Default 40 °C. Outdoor cable is taken hotter by `limits.sun_on_jacket`.
    #[schemars(extend("x-least" = -30, "x-most" = 65))]
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
