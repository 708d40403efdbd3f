//! How far a bracket can nod before what it carries meets the pole.

use crate::units::{Degrees, Millimetres};

/// What swings behind the pivot of a bracket.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Swing {
    /// From the pivot to the face of the pole, `s`.
    pub clearance: Millimetres,
    /// How far the radio reaches back behind the pivot, `b`.
    pub back: Millimetres,
    /// How far it reaches above the pivot, and below, `h`.
    pub half_height: Millimetres,
}

/// The greatest tilt, of either sign, that stays clear of the pole: 90° where it never meets it; none where it meets it
/// already when level.
///
/// ```text
/// b cos t + h sin t ≤ s,   t = atan2(h, b) - acos( s / √(b² + h²) )
/// ```
///
/// The corner of the radio circles round the pivot with the radius `√(b² + h²)`.
///
/// Source: plane geometry.
#[must_use]
pub fn free_tilt(swing: Swing) -> Option<Degrees> {
    let (clearance, back, half_height) = (swing.clearance.0, swing.back.0, swing.half_height.0);
    if back > clearance {
        return None;
    }
    let radius = libm::hypot(back, half_height);
    if radius <= clearance {
        return Some(Degrees(90.0));
    }
    let tilt = libm::atan2(half_height, back) - libm::acos(clearance / radius);
    Some(Degrees(tilt.to_degrees().min(90.0)))
}
