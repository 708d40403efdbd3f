//! The `fibre` document, and the runs of fibre.

use schemars::JsonSchema;
use serde::Deserialize;

use super::partly::completed;
use super::{Id, Jacket, Kind, Ref, Source, SwitchPort, Template, Text, Window};
use crate::units::{Celsius, DecibelsPerKilometre, Given, MegabitsPerSecond, Metres, Millimetres};

/// A cable of optical fibres.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Fibre {
    /// Always `fibre`.
    #[schemars(extend("const" = "fibre"))]
    pub kind: Kind,
    /// Short name; hops refer to it.
    pub id: Id,
    /// Whether it counts in place of a document of the same id in a shared library. Default `false`: the same id twice is an
    /// error.
    #[serde(default)]
    pub replaces: bool,
    /// Maker and type as printed on the jacket.
    pub title: Text,
    /// Kind of fibre by ISO/IEC 11801.
    pub category: FibreCategory,
    /// Where its jacket may be used.
    pub jacket: Jacket,
    /// Outside diameter of the jacket.
    pub outside_diameter: Given<Millimetres>,
    /// Whether there is no metal in it at all. Default `false`: what is not said to be free of metal has to be bonded.
    #[serde(default)]
    pub metal_free: bool,
    /// Loss at the wavelength that is used, if its sheet gives it. Default the most that its category may have.
    #[schemars(extend("x-least" = 0))]
    pub attenuation: Option<Given<DecibelsPerKilometre>>,
    /// Least bend radius when fixed, if its sheet gives it. Default ten times the diameter.
    pub bend_radius: Option<Given<Millimetres>>,
    /// Temperatures it may be used in.
    pub temperature: Option<Window<Celsius>>,
    /// Where its figures come from, and how sure they are.
    #[serde(default)]
    pub sources: Vec<Source>,
}

/// Kind of fibre by ISO/IEC 11801-1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum FibreCategory {
    /// Multimode, 62.5 µm.
    #[serde(rename = "OM1")]
    Om1,
    /// Multimode, 50 µm.
    #[serde(rename = "OM2")]
    Om2,
    /// Multimode for lasers, 2000 MHz km at 850 nm.
    #[serde(rename = "OM3")]
    Om3,
    /// Multimode for lasers, 4700 MHz km at 850 nm.
    #[serde(rename = "OM4")]
    Om4,
    /// Multimode for several wavelengths.
    #[serde(rename = "OM5")]
    Om5,
    /// Single mode.
    #[serde(rename = "OS2")]
    Os2,
}

impl FibreCategory {
    /// All of them.
    pub const ALL: [Self; 6] = [Self::Om1, Self::Om2, Self::Om3, Self::Om4, Self::Om5, Self::Os2];

    /// The name as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Om1 => "OM1",
            Self::Om2 => "OM2",
            Self::Om3 => "OM3",
            Self::Om4 => "OM4",
            Self::Om5 => "OM5",
            Self::Os2 => "OS2",
        }
    }
}

/// A run of fibre from a port of the radio. It carries data; the power comes over a run of copper.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(transform = completed)]
pub struct FibreRun {
    /// Template whose `fibre_run` says what this one does not write.
    pub like: Option<Ref<Template>>,
    /// Port of the radio it ends at.
    pub port: Id,
    /// Fibre cable.
    pub fibre: Ref<Fibre>,
    /// What is plugged into the radio.
    pub here: Pluggable,
    /// What is plugged in at the other end.
    pub there: Pluggable,
    /// Length outdoors.
    #[schemars(extend("x-least" = 0))]
    pub outdoor: Given<Metres>,
    /// Length indoors, cords included.
    #[schemars(extend("x-least" = 0))]
    pub indoor: Option<Given<Metres>>,
    /// Pairs of connectors mated on the way, those in the pluggables not counted. Default 0.
    #[serde(default)]
    pub mated_pairs: u8,
    /// Splices on the way. Default 0.
    #[serde(default)]
    pub splices: u8,
    /// The port of the switch that it leads to.
    pub switch: Option<SwitchPort>,
}

/// A pluggable transceiver.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Pluggable {
    /// Maker and model as printed on the label.
    pub title: Text,
    /// What it speaks, by IEEE 802.3.
    pub interface: Interface,
    /// Air temperatures it works in.
    pub temperature: Option<Window<Celsius>>,
}

macro_rules! interfaces {
    ($($(#[doc = $doc:literal])+ $name:ident: $word:literal, $rate:literal, $partner:ident;)+) => {
        /// What a pluggable speaks, by IEEE 802.3.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
        #[schemars(inline)]
        pub enum Interface {
            $($(#[doc = $doc])+ #[serde(rename = $word)] $name,)+
        }

        impl Interface {
            /// All of them.
            pub const ALL: &[Self] = &[$(Self::$name),+];

            /// The name as written.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self {
                    $(Self::$name => $word,)+
                }
            }

            /// Its line rate.
            #[must_use]
            pub const fn rate(self) -> MegabitsPerSecond {
                MegabitsPerSecond(match self {
                    $(Self::$name => $rate,)+
                })
            }

            /// What must be plugged in at the other end: the same, but for pairs on one fibre.
            #[must_use]
            pub const fn partner(self) -> Self {
                match self {
                    $(Self::$name => Self::$partner,)+
                }
            }
        }
    };
}

interfaces! {
    /// Two multimode fibres, 850 nm, 1 Gbit/s.
    Sx: "1000BASE-SX", 1000.0, Sx;
    /// Two fibres, 1310 nm, 1 Gbit/s.
    Lx: "1000BASE-LX", 1000.0, Lx;
    /// Two single-mode fibres, 1310 nm, 1 Gbit/s over 10 km.
    Lx10: "1000BASE-LX10", 1000.0, Lx10;
    /// One single-mode fibre, sends on 1490 nm, 1 Gbit/s.
    Bx10D: "1000BASE-BX10-D", 1000.0, Bx10U;
    /// One single-mode fibre, sends on 1310 nm, 1 Gbit/s.
    Bx10U: "1000BASE-BX10-U", 1000.0, Bx10D;
    /// Two multimode fibres, 850 nm, 10 Gbit/s.
    Sr: "10GBASE-SR", 10_000.0, Sr;
    /// Two single-mode fibres, 1310 nm, 10 Gbit/s.
    Lr: "10GBASE-LR", 10_000.0, Lr;
    /// Two multimode fibres, 850 nm, 25 Gbit/s.
    Sr25: "25GBASE-SR", 25_000.0, Sr25;
    /// Two single-mode fibres, 1310 nm, 25 Gbit/s.
    Lr25: "25GBASE-LR", 25_000.0, Lr25;
}
