//! Ice that grows on what stands in the weather: what it weighs, and how much more the wind meets.

use std::f64::consts::PI;

use crate::units::{Kilograms, KilogramsPerCubicMetre, Metres, Millimetres, SquareMetres};

/// Mass of ice on a round bar: `m = ρ π (d t + t²) L`.
///
/// Source: ISO 12494, ice of even thickness round a bar (from memory, not seen); geometry.
#[must_use]
pub fn on_bar(
    diameter: Millimetres,
    length: Metres,
    thickness: Millimetres,
    density: KilogramsPerCubicMetre,
) -> Kilograms {
    let (d, t) = (diameter.0 / 1000.0, thickness.0 / 1000.0);
    Kilograms(density.0 * PI * (d * t + t * t) * length.0)
}

/// Mass of ice on both faces of something flat: `m = 2 ρ t A`.
///
/// Source: geometry. Ice on the rim and in the hollow of a dish comes on top.
#[must_use]
pub fn on_faces(area: SquareMetres, thickness: Millimetres, density: KilogramsPerCubicMetre) -> Kilograms {
    Kilograms(2.0 * density.0 * thickness.0 / 1000.0 * area.0)
}

/// Area that the wind meets with ice on it, as if it were round: `A' = π/4 (√(4 A / π) + 2 t)²`.
///
/// Source: ISO 12494, ice of even thickness all round (from memory, not seen); geometry.
#[must_use]
pub fn grown(area: SquareMetres, thickness: Millimetres) -> SquareMetres {
    let across = libm::sqrt(4.0 * area.0 / PI) + 2.0 * thickness.0 / 1000.0;
    SquareMetres(PI / 4.0 * across * across)
}
