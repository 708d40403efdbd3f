//! What raises the wind at a site, and the ice that grows there.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Number, Text};
use crate::units::{Given, KilogramsPerCubicMetre, Metres, Millimetres, Percent};

/// How a hill or a cliff raises the wind at a site. It counts where the wind is that of a code for the region; a gust at the
/// antenna has the hill in it already.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Orography {
    /// Orography factor `c_o` of EN 1991-1-4 as somebody states it, on the mean wind: a plain number from 1 to 2 such as `1.2`. It counts
    /// in place of `slope`.
    pub factor: Option<Number>,
    /// Topographic factor `K_zt` of ASCE 7 as somebody states it, on the pressure: a plain number from 1 to 3 such as `1.4`.
    pub topographic_factor: Option<Number>,
    /// Shape of the hill or the cliff, from which `c_o` is computed for each height by EN 1991-1-4 annex A.3.
    pub slope: Option<Slope>,
    /// Where it is from: the map, the survey, whoever states it.
    pub source: Option<Text>,
}

/// A hill or a cliff as the wind comes upon it.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Slope {
    /// Whether it falls again behind its crest.
    pub shape: SlopeShape,
    /// Height of its crest above the flat ground upwind.
    #[schemars(extend("x-least" = 0.1))]
    pub height: Given<Metres>,
    /// Level length of the slope that faces the wind.
    #[schemars(extend("x-least" = 0.1))]
    pub upwind_length: Given<Metres>,
    /// Level length of the slope behind the crest of a hill. Default that of the slope that faces the wind.
    #[schemars(extend("x-least" = 0.1))]
    pub downwind_length: Option<Given<Metres>>,
    /// Level distance of the site from the crest, negative on the side that faces the wind.
    pub from_crest: Given<Metres>,
}

/// What rises out of the flat.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum SlopeShape {
    /// A hill or a ridge.
    Hill,
    /// A cliff or an escarpment: behind its crest it stays high.
    Cliff,
}

/// Ice that grows on antenna, radio and support: never a default, it is taken from a national map or from who looks after the
/// site.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Ice {
    /// Class by ISO 12494, if it is known. It says what `wind_share` is where none is written.
    pub class: Option<IceClass>,
    /// Thickness of the layer, the same all round.
    pub thickness: Given<Millimetres>,
    /// Density: 900 kg/m3 for glaze, less for rime.
    pub density: Given<KilogramsPerCubicMetre>,
    /// Share of the pressure of the survival wind that acts together with the ice. Default by `class`, without one all of it.
    pub wind_share: Option<Given<Percent>>,
}

macro_rules! classes {
    ($($(#[doc = $doc:literal])+ $name:ident $share:literal;)+) => {
        /// Class of ice by ISO 12494: glaze by its thickness, rime by its mass on a bar of 30 mm.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
        #[schemars(inline)]
        pub enum IceClass {
            $($(#[doc = $doc])+ $name,)+
        }

        impl IceClass {
            /// The name as written.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self {
                    $(Self::$name => stringify!($name),)+
                }
            }

            /// Share of the pressure of the wind that acts together with it, `k`: ISO 12494, from memory.
            #[must_use]
            pub const fn wind_share(self) -> Percent {
                Percent(match self {
                    $(Self::$name => $share,)+
                })
            }
        }
    };
}

classes! {
    /// Glaze, 10 mm.
    G1 40.0;
    /// Glaze, 20 mm.
    G2 45.0;
    /// Glaze, 30 mm.
    G3 50.0;
    /// Glaze, 40 mm.
    G4 55.0;
    /// Glaze, 50 mm.
    G5 60.0;
    /// Rime, 0.5 kg/m.
    R1 40.0;
    /// Rime, 0.9 kg/m.
    R2 45.0;
    /// Rime, 1.6 kg/m.
    R3 50.0;
    /// Rime, 2.8 kg/m.
    R4 55.0;
    /// Rime, 5 kg/m.
    R5 60.0;
    /// Rime, 8.9 kg/m.
    R6 70.0;
    /// Rime, 16 kg/m.
    R7 80.0;
    /// Rime, 28 kg/m.
    R8 90.0;
    /// Rime, 50 kg/m.
    R9 100.0;
    /// Rime, more.
    R10 100.0;
}
