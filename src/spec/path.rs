//! The path between the ends as far as a person describes it: ground, what stands on it, how surely that is known.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Date, Dialect, Text};
use crate::units::{Given, Metres, MetresPerYear};

/// Ground and obstacles between the ends. Of several sources the first counts: `profile`, `csv`, the network's `terrain`.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct HopPath {
    /// Points from end `a` to end `b`, in order of distance.
    #[serde(default)]
    pub profile: Vec<ProfilePoint>,
    /// File with the points, from the folder of this file and within that of the network. Its first line names the
    /// columns with their units: `distance [m],ground [m],obstacle [m],kind`; the last two may be left out.
    pub csv: Option<Text>,
    /// How that file separates its cells and writes decimals. Without it the header shows what separates cells, and decimals
    /// are taken only where commas separate them, which leaves the point.
    pub dialect: Option<Dialect>,
    /// Where the heights are from: a survey, a map, a model of the ground.
    pub source: Option<Text>,
    /// Day the heights were taken. Trees grow from this day; without it from the day of the network.
    pub date: Option<Date>,
    /// Width of a cell of the model the heights were read from, if it is wider than the points lie apart.
    #[schemars(extend("x-least" = 0))]
    pub resolution: Option<Given<Metres>>,
    /// How far the heights may be wrong, upwards. Taken off every clearance.
    #[schemars(extend("x-least" = 0))]
    pub uncertainty: Option<Given<Metres>>,
    /// What stands on the ground, whatever the ground is from.
    #[serde(default)]
    pub obstacles: Vec<Obstacle>,
}

/// A point of a profile.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct ProfilePoint {
    /// Distance from end `a` over the ground.
    #[schemars(extend("x-least" = 0))]
    pub distance: Given<Metres>,
    /// Ground above mean sea level.
    #[schemars(extend("x-least" = -500, "x-most" = 9000))]
    pub ground: Given<Metres>,
    /// What stands there.
    pub obstacle: Option<Standing>,
}

/// What stands at a point of a profile.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Standing {
    /// What it is.
    pub kind: ObstacleKind,
    /// Height above the ground there.
    #[schemars(extend("x-least" = 0, "x-most" = 1000))]
    pub height: Given<Metres>,
}

/// Something that stands on the path.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Obstacle {
    /// What it is.
    pub kind: ObstacleKind,
    /// Name as people say it.
    pub title: Option<Text>,
    /// Distance from end `a` over the ground, of its nearer edge where it is wide.
    #[schemars(extend("x-least" = 0))]
    pub distance: Given<Metres>,
    /// Distance of its farther edge from end `a`, where it is wide.
    #[schemars(extend("x-least" = 0))]
    pub to: Option<Given<Metres>>,
    /// Height above the ground there: of a crane with its jib up, of trees on the day of the heights.
    #[schemars(extend("x-least" = 0, "x-most" = 1000))]
    pub height: Given<Metres>,
    /// How much it grows in a year.
    #[schemars(extend("x-least" = 0))]
    pub growth: Option<Given<MetresPerYear>>,
    /// Last day that growth is counted to: the end of the design life, or the day it is full-grown.
    pub until: Option<Date>,
}

/// A kind of obstacle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum ObstacleKind {
    /// A house, a hall, a chimney: anything with a firm top.
    Building,
    /// A tree, a row or a wood of them.
    Trees,
    /// A crane at its highest.
    Crane,
    /// The top wire or pylon of a power line.
    PowerLine,
}

impl ObstacleKind {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Building, Self::Trees, Self::Crane, Self::PowerLine];

    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Building => "building",
            Self::Trees => "trees",
            Self::Crane => "crane",
            Self::PowerLine => "power-line",
        }
    }
}

/// Tiles of ground heights that the user has.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Terrain {
    /// Folder, from that of the network file: `N46E171.hgt` of one degree each way (SRTM layout), or `GeoTIFF` heights in
    /// metres on a grid of degrees (`.tif`, `.tiff`). It lies in the repository; a national set is named by `--terrain`.
    pub folder: Text,
    /// Where the tiles are from.
    pub source: Option<Text>,
    /// Day the heights were taken.
    pub date: Option<Date>,
    /// How far the heights may be wrong, upwards. Taken off every clearance.
    #[schemars(extend("x-least" = 0))]
    pub uncertainty: Option<Given<Metres>>,
}
