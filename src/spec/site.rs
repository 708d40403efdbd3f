//! The `site` document: a place where hops end.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{
    Date, Defaults, Fastener, Fixings, Ice, Id, Kind, LightningProtection, MastBond, Material, Orography, Text, Wind,
};
use crate::units::{Degrees, Given, Hours, Latitude, LineVolts, Longitude, Metres, Millimetres, MillimetresPerHour};

/// A place with something to mount on, power and earth.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Site {
    /// Always `site`.
    #[schemars(extend("const" = "site"))]
    pub kind: Kind,
    /// Short name; hops refer to it.
    pub id: Id,
    /// Whether it counts in place of a document of the same id in a shared library. Default `false`: the same id twice is an
    /// error.
    #[serde(default)]
    pub replaces: bool,
    /// Name as people say it.
    pub title: Text,
    /// Where it is, on the WGS 84 ellipsoid.
    pub position: Position,
    /// Ground above mean sea level at the support.
    #[schemars(extend("x-least" = -500, "x-most" = 9000))]
    pub ground_height: Given<Metres>,
    /// Rain rate exceeded for 0.01 % of an average year here, if it differs from the network's.
    pub rain_rate: Option<Given<MillimetresPerHour>>,
    /// Mean time until equipment here is restored, in place of the network's: longer where nobody gets up in winter.
    #[schemars(extend("x-least" = 0))]
    pub mean_time_to_restore: Option<Given<Hours>>,
    /// Wind here, in place of the network's.
    pub wind: Option<Wind>,
    /// Hill or cliff that raises the wind here.
    pub orography: Option<Orography>,
    /// Ice that grows here, in place of the network's.
    pub ice: Option<Ice>,
    /// How a crew gets there.
    pub access: Option<Text>,
    /// Whom to call.
    #[serde(default)]
    pub contacts: Vec<Contact>,
    /// What can hurt somebody here, a line each. Printed first in the install pack.
    #[serde(default)]
    pub hazards: Vec<Text>,
    /// What has to be signed, agreed or switched off before work starts here, a line each. Ticked off in the install pack.
    #[serde(default)]
    pub permits: Vec<Text>,
    /// Where people may stand or pass: walkways, windows, roof terraces.
    #[serde(default)]
    pub people: Vec<Occupied>,
    /// Power lines near. Only what is written is judged: look up before anything is raised.
    #[serde(default)]
    pub power_lines: Vec<PowerLine>,
    /// What ends, runs and groundings at this site are like where neither they nor a template say so: before the defaults of the
    /// network.
    pub defaults: Option<Defaults>,
    /// What antennas are mounted on.
    pub supports: Vec<Support>,
    /// Where power is taken.
    #[serde(default)]
    pub power: Vec<PowerPoint>,
    /// Where grounding conductors bond.
    #[serde(default)]
    pub earth: Vec<EarthPoint>,
    /// Lightning protection system of the structure, as others state it.
    #[serde(default)]
    pub lightning_protection: LightningProtection,
}

/// A point on the WGS 84 ellipsoid.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Position {
    /// North positive: `46.512340 deg`, `46.512340° N` or `46°30'44.4" N`.
    pub latitude: Given<Latitude>,
    /// East positive: `171.204560 deg`, `171.204560° E` or `171°12'16.4" E`.
    pub longitude: Given<Longitude>,
}

/// Somebody to call.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Contact {
    /// Name.
    pub name: Text,
    /// What they are there for: keys, power, owner.
    pub role: Option<Text>,
    /// Telephone number, quoted.
    pub phone: Text,
}

/// A spot where people may be, as seen from the supports of the site.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Occupied {
    /// What it is.
    pub title: Text,
    /// True bearing from the antenna.
    pub bearing: Given<Degrees>,
    /// Distance from the antenna over the ground.
    #[schemars(extend("x-least" = 0))]
    pub distance: Given<Metres>,
    /// Height of a head there, above the ground of the site.
    pub height: Given<Metres>,
}

/// A power line near the supports of the site.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct PowerLine {
    /// Which, and whose.
    pub title: Text,
    /// From the nearest support to the nearest wire, over the ground, its swing counted.
    #[schemars(extend("x-least" = 0))]
    pub distance: Given<Metres>,
    /// Its voltage, or the most that its owner says it has. Without it the distance for an unknown voltage is kept.
    #[schemars(extend("x-least" = 0))]
    pub voltage: Option<Given<LineVolts>>,
    /// What its owner agreed to: without it nothing is raised nearer than the distance to keep.
    pub consent: Option<Consent>,
}

/// The consent of the owner of a power line to work near it.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Consent {
    /// Letter, permit or order that it stands in.
    pub reference: Text,
    /// Its date.
    pub date: Date,
    /// Who gave it.
    pub name: Text,
}

/// Something an antenna is mounted on.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Support {
    /// Name within the site.
    pub id: Id,
    /// What it is.
    pub kind: SupportKind,
    /// Outside diameter of the tube the clamp closes on, as it measures: `76.1 mm`; or the name of its size, `DN 65 EN 10255`
    /// or `NPS 2 1/2`. A name that is not the same tube everywhere needs its standard.
    #[schemars(extend("x-tube" = true, "x-least" = 15))]
    pub outside_diameter: Given<Millimetres>,
    /// Thickness of the tube's wall.
    pub wall_thickness: Option<Given<Millimetres>>,
    /// What it is made of.
    pub material: Option<Material>,
    /// Height of its base above the ground of the site.
    #[schemars(extend("x-most" = 1000))]
    pub base_height: Given<Metres>,
    /// Length that stands free above the base.
    #[schemars(extend("x-least" = 0))]
    pub free_length: Given<Metres>,
    /// How a crew gets to it, in place of the way to the site.
    pub access: Option<Text>,
    /// What can hurt somebody on it, beside the hazards of the site.
    #[serde(default)]
    pub hazards: Vec<Text>,
    /// What ends, runs and groundings on this support are like: before the defaults of the site.
    pub defaults: Option<Defaults>,
    /// What stands close to the antennas on this support: the edge of the roof, a parapet, other masts.
    #[serde(default)]
    pub near_edges: Vec<NearEdge>,
    /// Lightning protection system of what this support stands on, where that is another structure than the rest of the site.
    /// Where its `system` is written, all of this counts in place of what the site says.
    #[serde(default)]
    pub lightning_protection: LightningProtection,
    /// How it is joined to that system.
    pub mast_bond: Option<MastBond>,
    /// What holds it to a wall or to its foundation.
    pub fixings: Option<Fixings>,
    /// Screws and nuts of the support that the crew tightens or checks, with their torque.
    #[serde(default)]
    pub fasteners: Vec<Fastener>,
}

/// Something close to a support that a beam must pass.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct NearEdge {
    /// What it is, as people say it.
    pub title: Text,
    /// Distance from the support, level.
    #[schemars(extend("x-least" = 0))]
    pub distance: Given<Metres>,
    /// Height of its top above the ground of the site.
    #[schemars(extend("x-most" = 1000))]
    pub height: Given<Metres>,
    /// True bearing from the support to its middle. Without it, it stands in the way of every beam.
    pub bearing: Option<Given<Degrees>>,
    /// Width across the bearing. Default none: a pole.
    #[schemars(extend("x-least" = 0))]
    pub width: Option<Given<Metres>>,
}

/// A kind of support.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum SupportKind {
    /// A tube standing on a roof or in the ground.
    Pole,
    /// A leg or a top tube of a mast or tower.
    Mast,
    /// A tube held off a wall.
    Wall,
}

impl SupportKind {
    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Pole => "pole",
            Self::Mast => "mast",
            Self::Wall => "wall",
        }
    }
}

/// A point where power is taken.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct PowerPoint {
    /// Name within the site.
    pub id: Id,
    /// Where and what it is.
    pub title: Text,
    /// What it is like there. Default `indoor`.
    #[serde(default)]
    pub place: Shelter,
    /// How often it fails and what bridges that. Without it no failure of the supply is counted.
    pub failures: Option<PowerFailures>,
}

/// How often a point where power is taken fails, and what bridges that.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct PowerFailures {
    /// Mean time from one failure to the next: `60 d`.
    #[schemars(extend("x-least" = 0.0001))]
    pub mean_time_between: Given<Hours>,
    /// How long one lasts on average; single ones are taken as exponential in length.
    #[schemars(extend("x-least" = 0))]
    pub mean_duration: Given<Hours>,
    /// How long a battery or a generator carries on. Default not at all.
    #[schemars(extend("x-least" = 0))]
    pub autonomy: Option<Given<Hours>>,
}

/// What keeps the weather off.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Shelter {
    /// Under a dry roof.
    #[default]
    Indoor,
    /// Outdoors in a box of IP65 or better.
    Box,
    /// In the weather.
    Outdoor,
}

/// A point where earth is bonded.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct EarthPoint {
    /// Name within the site.
    pub id: Id,
    /// Where and what it is.
    pub title: Text,
    /// Earth system it belongs to, where the site has more than one: points with the same name are bonded to each other,
    /// others are not.
    pub system: Option<Id>,
    /// Whether it is bonded to the earth electrode of the building, by a conductor that the local code accepts.
    pub bonded: Option<bool>,
}
