//! What a hop must reach: of a network, and of a hop where it differs.

use schemars::JsonSchema;
use serde::Deserialize;

use super::Text;
use crate::units::{Decibels, Given, MegabitsPerSecond, Percent};

/// What every hop of the network must reach.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Objectives {
    /// Share of the time in which the capacity below is there: of an average year and in both directions, unless `period` and
    /// `directions` say otherwise. Counted are rain, wet snow and multipath fading, equipment and its supply, as far as
    /// they are given.
    #[schemars(extend("x-least" = 50))]
    pub availability: Given<Percent>,
    /// The time it is a share of. Default `average-year`.
    pub period: Option<Period>,
    /// Whether it holds for the two directions together or for each by itself. Default `together`.
    pub directions: Option<Directions>,
    /// An objective for errors in the worst month, such as those of ITU-R F.1668, G.828 or G.826. Without it none is judged.
    pub errored: Option<Errored>,
    /// Payload rate, each way, that the availability is asked for.
    pub capacity: Given<MegabitsPerSecond>,
    /// Least clear-sky margin above the receiver threshold of that capacity. Without it only the availability counts.
    #[schemars(extend("x-least" = 0))]
    pub fade_margin: Option<Given<Decibels>>,
    /// How far a measured level may lie from the predicted one, either way. Default 4 dB (common practice).
    #[schemars(extend("x-least" = 0))]
    pub acceptance_window: Option<Given<Decibels>>,
}

/// The time an availability is a share of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Period {
    /// The year as it is on average.
    #[default]
    AverageYear,
    /// The worst calendar month of the year, whichever that is.
    WorstMonth,
}

/// Whether an availability holds for a hop or for each of its directions.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Directions {
    /// The hop is down while either direction is, as ITU-T G.827 counts a path.
    #[default]
    Together,
    /// Each direction by itself; the worse one counts.
    Each,
}

/// An objective for errors, as a number taken from a recommendation and apportioned to one hop.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Errored {
    /// Most of the worst month that may be severely errored in one direction.
    pub share: Given<Percent>,
    /// The recommendation and the class it is from.
    pub source: Text,
}

/// Where a hop asks for more or less than its network.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct HopObjectives {
    /// In place of the network's.
    pub availability: Option<Given<Percent>>,
    /// In place of the network's.
    pub period: Option<Period>,
    /// In place of the network's.
    pub directions: Option<Directions>,
    /// In place of the network's.
    pub errored: Option<Errored>,
    /// In place of the network's.
    pub capacity: Option<Given<MegabitsPerSecond>>,
    /// In place of the network's.
    #[schemars(extend("x-least" = 0))]
    pub fade_margin: Option<Given<Decibels>>,
    /// In place of the network's.
    #[schemars(extend("x-least" = 0))]
    pub acceptance_window: Option<Given<Decibels>>,
}
