//! Codes of practice a hop transmits under, and what its own licence says.

use schemars::JsonSchema;
use serde::Deserialize;

use super::Text;
use crate::units::{Dbm, Given};

/// A code of practice that limits what a hop may radiate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum LicenceCode {
    /// United States, 57 to 71 GHz, fixed point-to-point transmitters outdoors.
    #[serde(rename = "47 CFR 15.255 point-to-point")]
    Cfr15PointToPoint,
    /// United States, 57 to 71 GHz, all other transmitters.
    #[serde(rename = "47 CFR 15.255 other")]
    Cfr15Other,
    /// United States, 71 to 76 and 81 to 86 GHz, 47 CFR 101.113 and 101.115 as amended in 2024.
    #[serde(rename = "47 CFR 101")]
    Cfr101,
    /// The same as it stood from 2005 to 2023.
    #[serde(rename = "47 CFR 101 before 2024")]
    Cfr101Before2024,
    /// Europe, 57 to 64 GHz, point-to-point links.
    #[serde(rename = "ECC/REC/(09)01")]
    Ecc0901,
    /// Europe, 57 to 71 GHz, short-range devices, band c2.
    #[serde(rename = "ERC/REC 70-03 c2")]
    Erc7003C2,
    /// Europe, 57 to 71 GHz, short-range devices fixed outdoors, band c3.
    #[serde(rename = "ERC/REC 70-03 c3")]
    Erc7003C3,
    /// Europe, 71 to 76 and 81 to 86 GHz, with the channels of ECC/REC/(05)07.
    #[serde(rename = "EN 302 217")]
    En302217,
}

impl LicenceCode {
    /// Every code there is.
    pub const ALL: [Self; 8] = [
        Self::Cfr15PointToPoint,
        Self::Cfr15Other,
        Self::Cfr101,
        Self::Cfr101Before2024,
        Self::Ecc0901,
        Self::Erc7003C2,
        Self::Erc7003C3,
        Self::En302217,
    ];

    /// The name as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Cfr15PointToPoint => "47 CFR 15.255 point-to-point",
            Self::Cfr15Other => "47 CFR 15.255 other",
            Self::Cfr101 => "47 CFR 101",
            Self::Cfr101Before2024 => "47 CFR 101 before 2024",
            Self::Ecc0901 => "ECC/REC/(09)01",
            Self::Erc7003C2 => "ERC/REC 70-03 c2",
            Self::Erc7003C3 => "ERC/REC 70-03 c3",
            Self::En302217 => "EN 302 217",
        }
    }
}

/// What the licence of a hop says, where it has one of its own.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct HopLicence {
    /// In place of the network's `codes.licence`.
    #[serde(default)]
    pub codes: Vec<LicenceCode>,
    /// Number of the licence or registration, printed in the packs.
    pub number: Option<Text>,
    /// Greatest radiated power, EIRP, that the licence allows.
    pub max_eirp: Option<Given<Dbm>>,
    /// Greatest power at the antenna port that the licence allows.
    pub max_power: Option<Given<Dbm>>,
}
