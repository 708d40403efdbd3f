//! Lightning protection as others state it: whether a structure has a system, and how a hop stands to it.
//!
//! Nothing here is designed by this program. These are facts of whoever designed or inspected the protection; they are held
//! against each other and printed.

use schemars::JsonSchema;
use serde::Deserialize;

use super::Text;
use crate::units::{Given, Kiloamperes, Metres};

/// Lightning protection system of a structure, as its designer or an inspection states it. The program designs none, and does not say
/// whether one is needed: that is IEC 62305-2 or NFPA 780 in competent hands.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct LightningProtection {
    /// Whether the structure has one. Without it nothing about lightning is judged here, and the packs say so.
    pub system: Option<ProtectionSystem>,
    /// Class of the system by IEC 62305-1, if it is known.
    pub class: Option<ProtectionClass>,
    /// Who says so: designer, inspection report and its date.
    pub stated_by: Option<Text>,
}

/// Whether a structure has a lightning protection system.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum ProtectionSystem {
    /// It has one.
    Present,
    /// It has none.
    Absent,
    /// Nobody has looked.
    Unknown,
}

impl ProtectionSystem {
    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Present => "present",
            Self::Absent => "absent",
            Self::Unknown => "unknown",
        }
    }
}

/// Class of a lightning protection system, IEC 62305-1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum ProtectionClass {
    /// The strictest.
    I,
    /// The next.
    II,
    /// The next.
    III,
    /// The least.
    IV,
}

impl ProtectionClass {
    /// The numeral as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::I => "I",
            Self::II => "II",
            Self::III => "III",
            Self::IV => "IV",
        }
    }
}

/// How a support is joined to the lightning protection system of its structure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum MastBond {
    /// By a conductor: in a strike it carries part of the current.
    Direct,
    /// By an isolating spark gap, which conducts in a strike.
    SparkGap,
    /// Not at all: it is kept apart by the separation distance.
    Apart,
}

impl MastBond {
    /// The words for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Direct => "bonded directly",
            Self::SparkGap => "bonded by a spark gap",
            Self::Apart => "kept apart from it",
        }
    }
}

/// How the antenna of an end stands to the lightning protection system of its structure.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct EndLightning {
    /// Whether the antenna stands in the volume that the system protects from direct strikes.
    pub protected_volume: Option<ProtectedVolume>,
    /// Distance between what is mounted here and the conductors of the system.
    #[serde(default)]
    pub separation: Separation,
    /// Most impulse current that the designer of the protection counts on any one line of this end.
    pub line_current: Option<Given<Kiloamperes>>,
    /// Who says so: designer, drawing and its date.
    pub stated_by: Option<Text>,
}

/// The separation distance s of IEC 62305-3, 6.3: what its designer asks for, and what is kept.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Separation {
    /// What the designer of the protection asks for here. The program does not compute it.
    #[schemars(extend("x-least" = 0))]
    pub asked: Option<Given<Metres>>,
    /// The least distance that antenna, bracket and cables keep to every conductor of the system, as it is to be built.
    #[schemars(extend("x-least" = 0))]
    pub kept: Option<Given<Metres>>,
}

/// Where an antenna stands, as a direct strike sees it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum ProtectedVolume {
    /// In the protected volume: no direct strike, but all of its field. Zone LPZ 0B of IEC 62305-4.
    Inside,
    /// Outside of it: it may be struck. Zone LPZ 0A.
    Outside,
}

impl ProtectedVolume {
    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Inside => "inside",
            Self::Outside => "outside",
        }
    }
}

/// An impulse test that a surge arrester has passed, by IEC 61643-21.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct ImpulseTest {
    /// Category of the test.
    pub category: ImpulseCategory,
    /// Current of its impulses.
    pub current: Given<Kiloamperes>,
}

/// Category of an impulse test of surge arresters for signal lines, IEC 61643-21 table 3.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum ImpulseCategory {
    /// Slow rise, 10/1000 µs.
    B1,
    /// Slow rise, 10/700 µs.
    B2,
    /// Slow rise, 100 V/µs.
    B3,
    /// Fast rise, 8/20 µs, to 0.5 kA.
    C1,
    /// Fast rise, 8/20 µs, 1 kA to 5 kA: what a strike nearby induces.
    C2,
    /// Fast rise, 1 kV/µs.
    C3,
    /// High energy, 10/350 µs: part of a lightning current.
    D1,
    /// High energy, 10/250 µs.
    D2,
}

impl ImpulseCategory {
    /// The name as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::B1 => "B1",
            Self::B2 => "B2",
            Self::B3 => "B3",
            Self::C1 => "C1",
            Self::C2 => "C2",
            Self::C3 => "C3",
            Self::D1 => "D1",
            Self::D2 => "D2",
        }
    }

    /// Whether an arrester tested by it stands what a test of another one would put on it: D1 for C2 as well, since its
    /// impulse carries more charge.
    #[must_use]
    pub fn answers(self, wanted: Self) -> bool {
        self == wanted || (wanted == Self::C2 && self == Self::D1)
    }
}
