//! The `cable` document: balanced pairs, or two cores for direct current.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Cost, Id, Kind, Source, Text, Window};
use crate::units::{Amperes, Celsius, Given, Millimetres, OhmsPerKilometre, SquareMillimetres};

/// A cable type: four balanced pairs, or two cores for direct current.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Cable {
    /// Always `cable`.
    #[schemars(extend("const" = "cable"))]
    pub kind: Kind,
    /// Short name; hops refer to it.
    pub id: Id,
    /// Whether it counts in place of a document of the same id in a shared library. Default `false`: the same id twice is an
    /// error.
    #[serde(default)]
    pub replaces: bool,
    /// Maker and type as printed on the jacket.
    pub title: Text,
    /// What one metre of it costs. `alternatives` puts the cheaper of two proposals first; nothing else goes by it.
    pub cost: Option<Cost>,
    /// What is in it. Default `four-pair`.
    #[serde(default)]
    pub construction: Construction,
    /// Category by ISO/IEC 11801, of four pairs. Without it no data is carried.
    pub category: Option<Category>,
    /// Screening by ISO/IEC 11801: overall screen, slash, pair screen. None if not given.
    pub screening: Option<Screening>,
    /// Where its jacket may be used.
    pub jacket: Jacket,
    /// Outside diameter of the jacket; where only a range is known, the greatest.
    pub outside_diameter: Given<Millimetres>,
    /// The least it may be, where only a range is known, as of a standard part. What seals the cable has to hold both.
    pub least_diameter: Option<Given<Millimetres>>,
    /// Cross-section of one conductor. Without it the limit of 93.8 Ω/km is taken, that of a category.
    pub conductor: Option<Given<SquareMillimetres>>,
    /// What the conductors are made of.
    pub material: Conductor,
    /// Resistance of one conductor at 20 °C, if the sheet gives it.
    pub resistance: Option<Given<OhmsPerKilometre>>,
    /// Least bend radius when fixed, if its sheet gives it. Default four times the diameter (ANSI/TIA-568).
    pub bend_radius: Option<Given<Millimetres>>,
    /// Temperatures it may be used in.
    pub temperature: Option<Window<Celsius>>,
    /// Current it may carry all the time, as its sheet or the code of the place says: what a fuse must protect.
    pub rated_current: Option<Given<Amperes>>,
    /// Where its figures come from, and how sure they are.
    #[serde(default)]
    pub sources: Vec<Source>,
}

impl Cable {
    /// Whether a window of outside diameters holds it, whatever of its range it turns out to be.
    #[must_use]
    pub fn fits(&self, window: &Window<Millimetres>) -> bool {
        let least = self.least_diameter.as_ref().map_or(self.outside_diameter.value, |least| least.value);
        window.holds(least) && window.holds(self.outside_diameter.value)
    }

    /// Its diameter as written: `6.8 mm`, or `7.3 mm to 8.5 mm`.
    #[must_use]
    pub fn across(&self) -> String {
        match &self.least_diameter {
            Some(least) => format!("{least} to {}", self.outside_diameter),
            None => self.outside_diameter.to_string(),
        }
    }

    /// How it is screened.
    #[must_use]
    pub fn screened(&self) -> Screening {
        self.screening.unwrap_or(Screening::UUtp)
    }

    /// Whether it has a screen that can be bonded.
    #[must_use]
    pub fn has_screen(&self) -> bool {
        self.screened() != Screening::UUtp
    }

    /// Pairs it can bring power over.
    #[must_use]
    pub const fn pairs(&self) -> u8 {
        match self.construction {
            Construction::FourPair => 4,
            Construction::TwoCore => 1,
        }
    }

    /// Category and screening in a few letters; the cores where it has none.
    #[must_use]
    pub fn grade(&self) -> String {
        match (self.construction, self.category, &self.conductor) {
            (Construction::TwoCore, _, Some(area)) => format!("2 × {area}"),
            (Construction::TwoCore, _, None) => Construction::TwoCore.word().to_owned(),
            (Construction::FourPair, Some(category), _) => format!("{} {}", category.word(), self.screened().word()),
            (Construction::FourPair, None, _) => self.screened().word().to_owned(),
        }
    }
}

/// What is in a cable.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Construction {
    /// Four balanced pairs, for data and power.
    #[default]
    FourPair,
    /// Two cores, for direct current alone.
    TwoCore,
}

impl Construction {
    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::FourPair => "four-pair",
            Self::TwoCore => "two-core",
        }
    }
}

/// Category of a balanced cable.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum Category {
    /// 100 MHz, older form.
    #[serde(rename = "Cat 5")]
    Cat5,
    /// 100 MHz.
    #[serde(rename = "Cat 5e")]
    Cat5e,
    /// 250 MHz.
    #[serde(rename = "Cat 6")]
    Cat6,
    /// 500 MHz.
    #[serde(rename = "Cat 6A")]
    Cat6A,
    /// 600 MHz.
    #[serde(rename = "Cat 7")]
    Cat7,
    /// 1000 MHz.
    #[serde(rename = "Cat 7A")]
    Cat7A,
}

impl Category {
    /// The name as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Cat5 => "Cat 5",
            Self::Cat5e => "Cat 5e",
            Self::Cat6 => "Cat 6",
            Self::Cat6A => "Cat 6A",
            Self::Cat7 => "Cat 7",
            Self::Cat7A => "Cat 7A",
        }
    }
}

/// Screening code of ISO/IEC 11801-1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum Screening {
    /// No screen.
    #[serde(rename = "U/UTP")]
    UUtp,
    /// Overall foil.
    #[serde(rename = "F/UTP")]
    FUtp,
    /// Overall braid.
    #[serde(rename = "S/UTP")]
    SUtp,
    /// Overall braid and foil.
    #[serde(rename = "SF/UTP")]
    SfUtp,
    /// Foil on each pair.
    #[serde(rename = "U/FTP")]
    UFtp,
    /// Overall foil, foil on each pair.
    #[serde(rename = "F/FTP")]
    FFtp,
    /// Overall braid, foil on each pair.
    #[serde(rename = "S/FTP")]
    SFtp,
    /// Overall braid and foil, foil on each pair.
    #[serde(rename = "SF/FTP")]
    SfFtp,
}

impl Screening {
    /// The code as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::UUtp => "U/UTP",
            Self::FUtp => "F/UTP",
            Self::SUtp => "S/UTP",
            Self::SfUtp => "SF/UTP",
            Self::UFtp => "U/FTP",
            Self::FFtp => "F/FTP",
            Self::SFtp => "S/FTP",
            Self::SfFtp => "SF/FTP",
        }
    }
}

/// Where a jacket may be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Jacket {
    /// UV-stable and weatherproof.
    Outdoor,
    /// Indoors only.
    Indoor,
}

impl Jacket {
    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Outdoor => "outdoor",
            Self::Indoor => "indoor",
        }
    }
}

/// What conductors are made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Conductor {
    /// Solid copper.
    Copper,
    /// Aluminium with a copper skin of 10 % by volume.
    CopperCladAluminium,
}

impl Conductor {
    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Copper => "copper",
            Self::CopperCladAluminium => "copper-clad aluminium",
        }
    }
}
