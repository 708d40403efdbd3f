//! What a whole profile takes out of a ray, as if one edge stood for all of it.
//!
//! A line and the profile under it go in. The horizons seen from both antennas are prolonged until they meet, and there
//! the edge is put; with a free line of sight it is the point that comes nearest, in wave terms. On a hop of millimetre
//! waves any loss here is a fault of the design, and the number only tells how grave.

use super::clearance::{Point, Sightline};
use super::knife_edge;
use crate::units::{Decibels, Gigahertz, Metres};

/// Diffraction over a profile.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Diffraction {
    /// Height of the edge in wave terms, `ν`; minus infinity if the profile has no point between the ends.
    pub nu: f64,
    /// Loss over that edge alone, `L_uc`: the one to take for a building or another single edge.
    pub edge: Decibels,
    /// Loss with what rough terrain adds, `L_b`.
    pub terrain: Decibels,
}

/// Diffraction loss over a profile.
///
/// ```text
/// S_tim = max[ (h_i + 500 C_e d_i (d - d_i) - h_ts) / d_i ],   S_tr = (h_rs - h_ts) / d
///
/// S_tim < S_tr:   ν = max[ (h_i + 500 C_e d_i (d - d_i) - (h_ts (d - d_i) + h_rs d_i) / d)
///                          √( 0.002 d / (λ d_i (d - d_i)) ) ]
///
/// else:           S_rim = max[ (h_i + 500 C_e d_i (d - d_i) - h_rs) / (d - d_i) ]
///                 d_b   = (h_rs - h_ts + S_rim d) / (S_tim + S_rim)
///                 ν     = (h_ts + S_tim d_b - (h_ts (d - d_b) + h_rs d_b) / d) √( 0.002 d / (λ d_b (d - d_b)) )
///
/// L_uc = J(ν),   L_b = L_uc + (1 - exp(-L_uc / 6)) (10 + 0.02 d)
/// ```
///
/// with `d` in kilometres and the terms in `C_e` the bulge of the Earth. Points that are not between the ends are
/// passed over. The profile may be a slice of a longer one; its order does not matter.
///
/// Source: Recommendation ITU-R P.526-15, section 4.5.1.
#[must_use]
pub fn diffraction(line: &Sightline, frequency: Gigahertz, profile: &[Point]) -> Diffraction {
    let nu = parameter(line, frequency, profile);
    let edge = knife_edge::loss(nu);
    let rough = (1.0 - libm::exp(-edge.0 / 6.0)) * (10.0 + 0.02 * line.length.0 / 1000.0);
    Diffraction { nu, edge, terrain: edge + Decibels(rough) }
}

/// `ν` of the edge that stands for the profile, see [`diffraction`].
fn parameter(line: &Sightline, frequency: Gigahertz, profile: &[Point]) -> f64 {
    let between = || profile.iter().copied().filter(|point| line.spans(*point));
    // All heights are taken over the straight line, not the sea: a = S_tim - S_tr and b = S_rim + S_tr, in metres to
    // the metre, lose no digits where a point just touches the line.
    let above = |point: Point| -line.clearance(point).0;
    let a = highest(between().map(|point| above(point) / point.distance.0));
    if a <= 0.0 {
        return highest(
            between().map(|point| {
                knife_edge::parameter(Metres(above(point)), frequency, point.distance, line.beyond(point))
            }),
        );
    }
    let b = highest(between().map(|point| above(point) / line.beyond(point).0));
    let d = line.length.0;
    let d_b = b * d / (a + b);
    knife_edge::parameter(Metres(a * d_b), frequency, Metres(d_b), Metres(d - d_b))
}

fn highest(values: impl Iterator<Item = f64>) -> f64 {
    values.fold(f64::NEG_INFINITY, f64::max)
}
