//! What a grounding conductor is to a surge: an inductance, whatever its size.

use std::f64::consts::PI;

use crate::units::{Metres, Microhenries, SquareMillimetres};

/// Inductance of a straight round wire, `L`.
///
/// ```text
/// L = 0.2 µH/m · l ( ln(4 l / d) - 0.75 ),   d = √(4 A / π)
/// ```
///
/// For a wire much longer than thick, at low frequency; a bend or a coil adds to it. Nothing for no length. A surge of
/// 10 kA/µs makes 10 kV of every microhenry, so a metre less saves more than a thicker wire does.
///
/// Source: F. W. Grover, Inductance Calculations, straight round wire (from memory, not seen).
#[must_use]
pub fn inductance(length: Metres, area: SquareMillimetres) -> Microhenries {
    let (l, d) = (length.0, (4.0 * area.0 / PI).sqrt() / 1000.0);
    if l <= d {
        return Microhenries(0.0);
    }
    Microhenries(0.2 * l * (libm::log(4.0 * l / d) - 0.75))
}
