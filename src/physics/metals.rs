//! Metals that eat each other where they touch in the wet.

use crate::units::Volts;

/// What outdoor parts are made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Metal {
    /// Copper, as conductors are.
    Copper,
    /// Tinned copper.
    TinnedCopper,
    /// Brass.
    Brass,
    /// Stainless steel with 18 % chromium and 8 % nickel.
    Stainless,
    /// Steel without a coat of metal.
    Steel,
    /// Steel dipped in zinc.
    Galvanised,
    /// Aluminium and its alloys.
    Aluminium,
}

/// Difference that does little harm out of doors, away from the sea.
///
/// Source: common practice, no source. Handbooks (second-hand) have 0.15 V outdoors, in damp or in salt air, 0.25 V in
/// warehouses without heating, 0.50 V where the air is controlled.
pub const OUTDOORS: Volts = Volts(0.25);

impl Metal {
    /// Anodic index, volts below gold: the greater, the more it is eaten.
    ///
    /// Source: handbook values, second-hand; they vary from table to table by some 0.1 V.
    #[must_use]
    pub const fn anodic_index(self) -> Volts {
        Volts(match self {
            Self::Copper => 0.35,
            Self::Brass => 0.40,
            Self::Stainless => 0.50,
            Self::TinnedCopper => 0.65,
            Self::Steel => 0.85,
            Self::Aluminium => 0.95,
            Self::Galvanised => 1.20,
        })
    }
}

/// How far two metals are apart.
///
/// Source: [`Metal::anodic_index`].
#[must_use]
pub fn apart(one: Metal, other: Metal) -> Volts {
    Volts((one.anodic_index().0 - other.anodic_index().0).abs())
}
