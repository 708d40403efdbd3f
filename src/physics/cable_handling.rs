//! How tightly a cable may be bent.

use crate::units::Millimetres;

/// Least bend radius of a four-pair cable at rest, over its outside diameter.
///
/// Source: ANSI/TIA-568.0 (from memory, not seen).
const FIXED: f64 = 4.0;

/// The same while it is pulled.
///
/// Source: IEC 61156-5 (from memory, not seen).
const PULLING: f64 = 8.0;

/// Least bend radius of a cable that lies fixed.
///
/// ```text
/// r = 4 D
/// ```
///
/// Source: ANSI/TIA-568.0 (from memory, not seen). The maker's own figure goes before it.
#[must_use]
pub fn fixed_bend(outside: Millimetres) -> Millimetres {
    Millimetres(FIXED * outside.0)
}

/// Least bend radius of a cable while it is pulled.
///
/// ```text
/// r = 8 D
/// ```
///
/// Source: IEC 61156-5 (from memory, not seen). The maker's own figure goes before it.
#[must_use]
pub fn pulling_bend(outside: Millimetres) -> Millimetres {
    Millimetres(PULLING * outside.0)
}
