//! Hills and cliffs raise the wind.

use crate::units::Metres;

/// What rises out of the flat.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    /// A hill or a ridge: it falls again behind its crest.
    Hill,
    /// A cliff or an escarpment: behind its crest it stays high.
    Cliff,
}

/// A hill or a cliff as the wind comes upon it, and where on it one stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slope {
    /// What it is.
    pub shape: Shape,
    /// Height of the crest above the flat ground upwind, `H`.
    pub height: Metres,
    /// Level length of the slope that faces the wind, `L_u`.
    pub upwind: Metres,
    /// Level length of the slope behind the crest, `L_d`; nothing comes of it at a cliff.
    pub downwind: Metres,
    /// Level distance from the crest, `x`: negative upwind of it.
    pub from_crest: Metres,
}

/// Slopes flatter than this raise nothing.
const FLAT: f64 = 0.05;
/// Slopes steeper than this count by their height.
const STEEP: f64 = 0.3;
/// Nearer behind the edge of a cliff than this, in `L_e`, the value runs straight from that at the edge.
const BEHIND_EDGE: f64 = 0.1;

/// Orography factor `c_o`: how much faster the mean wind is at a height above the ground there than over flat land.
///
/// ```text
/// Φ = H / L_u;   c_o = 1 to Φ = 0.05,   1 + 2 s Φ to 0.3,   1 + 0.6 s above
/// L_e = L_u to Φ = 0.3,   H / 0.3 above;   Z = z / L_e
/// upwind:          s = A exp(B x / L_u),  A = 0.1552 Z⁴ − 0.8575 Z³ + 1.8133 Z² − 1.9115 Z + 1.0124,
///                                         B = 0.3542 Z² − 1.0577 Z + 2.6456
/// behind a hill:   s = A exp(B x / L_d),  B = −0.3056 Z² + 1.0212 Z − 1.7637
/// behind a cliff:  s = A X² + B X + C,    X = lg(x / L_e), polynomials of lg Z
/// ```
///
/// From 1.5 `L_u` before the crest to 2 `L_d` or 3.5 `L_e` behind it, up to 2 `L_e` above the ground; 1 elsewhere.
///
/// Source: EN 1991-1-4:2005, 4.3.3 and annex A.3 (second-hand, three public implementations that agree).
#[must_use]
pub fn factor(slope: &Slope, above_ground: Metres) -> f64 {
    let steepness = slope.height.0 / slope.upwind.0;
    if steepness < FLAT {
        return 1.0;
    }
    let effective = if steepness <= STEEP { slope.upwind.0 } else { slope.height.0 / STEEP };
    let height = above_ground.0.max(0.0) / effective;
    let location = if height > 2.0 { 0.0 } else { location(slope, effective, height).max(0.0) };
    if steepness <= STEEP { 1.0 + 2.0 * location * steepness } else { 1.0 + 0.6 * location }
}

/// The location factor `s`.
fn location(slope: &Slope, effective: f64, height: f64) -> f64 {
    let x = slope.from_crest.0;
    let crest = (((0.1552 * height - 0.8575) * height + 1.8133) * height - 1.9115) * height + 1.0124;
    if x <= 0.0 {
        let (along, b) = (x / slope.upwind.0, 0.3542 * height * height - 1.0577 * height + 2.6456);
        return if along < -1.5 { 0.0 } else { crest * libm::exp(b * along) };
    }
    match slope.shape {
        Shape::Hill => {
            let (along, b) = (x / slope.downwind.0, -0.3056 * height * height + 1.0212 * height - 1.7637);
            if along > 2.0 { 0.0 } else { crest * libm::exp(b * along) }
        }
        Shape::Cliff => {
            let along = x / effective;
            if along > 3.5 {
                0.0
            } else if along < BEHIND_EDGE {
                crest + (behind_cliff(BEHIND_EDGE, height) - crest) * along / BEHIND_EDGE
            } else {
                behind_cliff(along, height)
            }
        }
    }
}

/// The location factor behind the edge of a cliff.
fn behind_cliff(along: f64, height: f64) -> f64 {
    let (far, high) = (libm::log10(along), libm::log10(height.max(0.1)));
    let polynomial =
        |[cubic, square, linear, plain]: [f64; 4]| ((cubic * high + square) * high + linear) * high + plain;
    let square = polynomial([-1.3420, -0.8222, 0.4609, -0.0791]);
    let linear = polynomial([-1.0196, -0.8910, 0.5343, -0.1156]);
    let plain = polynomial([0.8030, 0.4236, -0.5738, 0.1606]);
    (square * far + linear) * far + plain
}
