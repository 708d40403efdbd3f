//! The `supply` document: what powers a radio over its cable.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Cost, Id, Kind, Source, Text, Window};
use crate::units::{Celsius, Given, MegabitsPerSecond, Volts, Watts};

/// A power supply, injector or switch port.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Supply {
    /// Always `supply`.
    #[schemars(extend("const" = "supply"))]
    pub kind: Kind,
    /// Short name; hops refer to it.
    pub id: Id,
    /// Whether it counts in place of a document of the same id in a shared library. Default `false`: the same id twice is an
    /// error.
    #[serde(default)]
    pub replaces: bool,
    /// Maker and model as printed on the label.
    pub title: Text,
    /// What one costs. `alternatives` puts the cheaper of two proposals first; nothing else goes by it.
    pub cost: Option<Cost>,
    /// How it hands power over.
    pub standard: Standard,
    /// Class it grants, 0 to 8, if it is of IEEE 802.3.
    #[schemars(extend("enum" = [0, 1, 2, 3, 4, 5, 6, 7, 8]))]
    pub class: Option<u8>,
    /// Contacts it feeds and how they are poled, if it is passive.
    pub wiring: Option<Wiring>,
    /// Voltage at its port, least and greatest.
    pub voltage: Window<Volts>,
    /// Most power it gives at its port.
    pub power: Given<Watts>,
    /// Most power of all its ports together, where it feeds several runs.
    pub total_power: Option<Given<Watts>>,
    /// Pairs it powers: 2 or 4; 1 is a plain two-wire feed.
    #[schemars(extend("enum" = [1, 2, 4]))]
    pub pairs: u8,
    /// Line rate it passes. Without it, it passes no data.
    pub rate: Option<Given<MegabitsPerSecond>>,
    /// Where it may stand.
    pub location: Location,
    /// Air temperatures it works in.
    pub temperature: Option<Window<Celsius>>,
    /// Where its figures come from, and how sure they are.
    #[serde(default)]
    pub sources: Vec<Source>,
}

/// Which contacts of an eight-pole plug are positive and which negative.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum Wiring {
    /// Contacts 1 and 2 positive, 3 and 6 negative.
    #[serde(rename = "12-plus-36-minus")]
    P12,
    /// Contacts 3 and 6 positive, 1 and 2 negative.
    #[serde(rename = "36-plus-12-minus")]
    P36,
    /// Contacts 4 and 5 positive, 7 and 8 negative.
    #[serde(rename = "45-plus-78-minus")]
    P45,
    /// Contacts 7 and 8 positive, 4 and 5 negative.
    #[serde(rename = "78-plus-45-minus")]
    P78,
    /// All pairs: 1, 2, 4 and 5 positive.
    #[serde(rename = "1245-plus-3678-minus")]
    P1245,
    /// All pairs: 3, 6, 7 and 8 positive.
    #[serde(rename = "3678-plus-1245-minus")]
    P3678,
    /// All pairs: 3, 6, 4 and 5 positive.
    #[serde(rename = "3645-plus-1278-minus")]
    P3645,
    /// All pairs: 1, 2, 7 and 8 positive.
    #[serde(rename = "1278-plus-3645-minus")]
    P1278,
    /// Two poles of a terminal or a barrel plug, whichever way round: as an isolated supply or input has them.
    #[serde(rename = "two-pole")]
    TwoPole,
    /// Two poles, the negative one earthed or joined to the case.
    #[serde(rename = "two-pole-negative-earthed")]
    NegativeEarthed,
    /// Two poles, the positive one earthed or joined to the case: -48 V plants.
    #[serde(rename = "two-pole-positive-earthed")]
    PositiveEarthed,
    /// A barrel plug, its middle positive.
    #[serde(rename = "barrel-centre-plus")]
    CentrePlus,
    /// A barrel plug, its middle negative.
    #[serde(rename = "barrel-centre-minus")]
    CentreMinus,
}

impl Wiring {
    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::P12 => "12-plus-36-minus",
            Self::P36 => "36-plus-12-minus",
            Self::P45 => "45-plus-78-minus",
            Self::P78 => "78-plus-45-minus",
            Self::P1245 => "1245-plus-3678-minus",
            Self::P3678 => "3678-plus-1245-minus",
            Self::P3645 => "3645-plus-1278-minus",
            Self::P1278 => "1278-plus-3645-minus",
            Self::TwoPole => "two-pole",
            Self::NegativeEarthed => "two-pole-negative-earthed",
            Self::PositiveEarthed => "two-pole-positive-earthed",
            Self::CentrePlus => "barrel-centre-plus",
            Self::CentreMinus => "barrel-centre-minus",
        }
    }

    /// The same contacts the other way round.
    #[must_use]
    pub const fn reversed(self) -> Self {
        match self {
            Self::P12 => Self::P36,
            Self::P36 => Self::P12,
            Self::P45 => Self::P78,
            Self::P78 => Self::P45,
            Self::P1245 => Self::P3678,
            Self::P3678 => Self::P1245,
            Self::P3645 => Self::P1278,
            Self::P1278 => Self::P3645,
            Self::TwoPole => Self::TwoPole,
            Self::NegativeEarthed => Self::PositiveEarthed,
            Self::PositiveEarthed => Self::NegativeEarthed,
            Self::CentrePlus => Self::CentreMinus,
            Self::CentreMinus => Self::CentrePlus,
        }
    }

    /// Whether an input of this wiring may take what a supply of another has. An isolated one takes either pole earthed, and
    /// a supply that does not say which is earthed is not known to be wrong.
    #[must_use]
    pub fn may_take(self, supply: Self) -> bool {
        let poled = |wiring| matches!(wiring, Self::NegativeEarthed | Self::PositiveEarthed);
        let isolated = self == Self::TwoPole && poled(supply);
        let unsaid = supply == Self::TwoPole && (poled(self) || matches!(self, Self::CentrePlus | Self::CentreMinus));
        self == supply || isolated || unsaid
    }
}

/// How a supply hands power over.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum Standard {
    /// IEEE 802.3 Type 1.
    #[serde(rename = "802.3af")]
    Af,
    /// IEEE 802.3 Type 2.
    #[serde(rename = "802.3at")]
    At,
    /// IEEE 802.3 Type 3 or 4.
    #[serde(rename = "802.3bt")]
    Bt,
    /// Fixed voltage, no detection.
    #[serde(rename = "passive")]
    Passive,
}

impl Standard {
    /// The name as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Af => "802.3af",
            Self::At => "802.3at",
            Self::Bt => "802.3bt",
            Self::Passive => "passive",
        }
    }
}

/// Where a piece of equipment may stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Location {
    /// Under a dry roof.
    Indoor,
    /// In the weather.
    Outdoor,
}
