//! Classes of emission of digital radios.

use schemars::JsonSchema;
use serde::Deserialize;

/// A class of emission: how the carrier is modulated, by what signal, for what. `D7W` is a carrier modulated in amplitude and
/// angle by several digital channels that carry anything.
///
/// Source: ITU Radio Regulations, Appendix 1, section II (text seen).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[schemars(inline)]
pub enum EmissionClass {
    /// Amplitude and angle; one digital channel; data.
    D1D,
    /// Amplitude and angle; one digital channel; a combination.
    D1W,
    /// Amplitude and angle; several digital channels; data.
    D7D,
    /// Amplitude and angle; several digital channels; a combination.
    D7W,
    /// Phase; one digital channel; data.
    G1D,
    /// Phase; one digital channel; a combination.
    G1W,
    /// Phase; several digital channels; data.
    G7D,
    /// Phase; several digital channels; a combination.
    G7W,
    /// Frequency; one digital channel; data.
    F1D,
    /// Frequency; one digital channel; a combination.
    F1W,
    /// Frequency; several digital channels; data.
    F7D,
    /// Frequency; several digital channels; a combination.
    F7W,
}

impl EmissionClass {
    /// The symbols as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::D1D => "D1D",
            Self::D1W => "D1W",
            Self::D7D => "D7D",
            Self::D7W => "D7W",
            Self::G1D => "G1D",
            Self::G1W => "G1W",
            Self::G7D => "G7D",
            Self::G7W => "G7W",
            Self::F1D => "F1D",
            Self::F1W => "F1W",
            Self::F7D => "F7D",
            Self::F7W => "F7W",
        }
    }
}
