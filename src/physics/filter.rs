//! How much of what is sent in one channel a receiver in another lets in.
//!
//! Two masks, their bandwidths and the distance of their centres go in; what the filter takes off the power comes out. A
//! mask is the density of a sender, or the response of a receiver, over the distance from its own centre. Without one of
//! its own a channel counts as a rectangle: honest where channels overlap, silent about what leaks into the next.

use std::f64::consts::LN_10;

use crate::units::{Decibels, Megahertz};

/// Level over the distance from the centre of a channel: symmetric, straight between its points in decibels, nothing
/// beyond the last.
#[derive(Debug, Clone, PartialEq)]
pub struct Mask {
    /// Distance from the centre in channel bandwidths, ascending from 0; level in decibels. Two points at least.
    points: Vec<(f64, f64)>,
}

impl Mask {
    /// All of the power evenly in the channel, and none beside it.
    #[must_use]
    pub fn rectangle() -> Self {
        Self { points: vec![(0.0, 0.0), (0.5, 0.0)] }
    }

    /// A mask of points: distance from the centre in channel bandwidths, and the level there.
    ///
    /// None if there are fewer than two, the first is not at 0, a distance does not lie beyond the one before, or a
    /// number is not finite. Levels count against each other only, whatever the first is.
    #[must_use]
    pub fn new(points: &[(f64, Decibels)]) -> Option<Self> {
        let finite = points.iter().all(|(offset, level)| offset.is_finite() && level.0.is_finite());
        let ascending = points.is_sorted_by(|one, next| one.0 < next.0);
        let from_centre = points.len() > 1 && points.first().is_some_and(|(offset, _)| *offset == 0.0);
        let points = points.iter().map(|(offset, level)| (*offset, level.0)).collect();
        (finite && ascending && from_centre).then_some(Self { points })
    }

    /// Distance of the last point from the centre, in channel bandwidths: beyond it there is nothing.
    #[must_use]
    pub fn reach(&self) -> f64 {
        self.points.last().map_or(0.0, |(offset, _)| *offset)
    }

    /// The mask of a channel, over the frequency: both sides of it, ascending.
    fn over(&self, bandwidth: f64, centre: f64) -> Vec<(f64, f64)> {
        let left = self.points.iter().rev().map(|(offset, level)| (centre - offset * bandwidth, *level));
        let right = self.points.iter().skip(1).map(|(offset, level)| (centre + offset * bandwidth, *level));
        left.chain(right).collect()
    }
}

/// Net filter discrimination `NFD`: how far what is sent in one channel lies above what the filter of another passes.
///
/// ```text
/// NFD = -10 lg( ∫ S(f) H(f - Δf) df / ∫ S(f) df )
///
/// ∫ over a piece of width w from y₀ to y₁ dB:   w 10^(y₀/10) (e^s - 1) / s,   s = (y₁ - y₀) ln 10 / 10
/// ```
///
/// `S` is the density that is sent and `H` the response to powers, both by their [`Mask`], `Δf` the `offset` of their
/// centres, whose sign does not matter. The level less this is to be held against the noise in the bandwidth of the
/// receiver. None where nothing overlaps. Exact for masks that are straight in decibels; a mask of a standard is an
/// envelope and makes the leakage greater than it is, by several decibels (common practice, no source). Rectangles come
/// to the share of the sender's channel that lies in the receiver's.
///
/// Source: definition; HCM Agreement, Annex 3B, whose masks discrimination and net filter discrimination add to this. The
/// closed form of a piece is own.
#[must_use]
pub fn discrimination(
    sent: &Mask,
    sent_bandwidth: Megahertz,
    heard: &Mask,
    heard_bandwidth: Megahertz,
    offset: Megahertz,
) -> Option<Decibels> {
    let apart = offset.0.abs();
    if apart >= sent.reach() * sent_bandwidth.0 + heard.reach() * heard_bandwidth.0 {
        return None;
    }
    let (density, response) = (sent.over(sent_bandwidth.0, 0.0), heard.over(heard_bandwidth.0, apart));
    let all: f64 = density.windows(2).map(|ends| piece(ends[0], ends[1])).sum();
    let passed = passed(&density, &response);
    (passed > 0.0 && all > 0.0).then(|| Decibels(10.0 * libm::log10(all / passed)))
}

/// Power under a line that is straight in decibels.
fn piece((from, y_0): (f64, f64), (to, y_1): (f64, f64)) -> f64 {
    let s = (y_1 - y_0) * LN_10 / 10.0;
    let mean = if s == 0.0 { 1.0 } else { libm::expm1(s) / s };
    (to - from) * libm::exp10(y_0 / 10.0) * mean
}

/// Power under the product of two lines of pieces, wherever both are: their decibels add.
fn passed(density: &[(f64, f64)], response: &[(f64, f64)]) -> f64 {
    let (mut s, mut h, mut power) = (0, 0, 0.0);
    while let (Some([s_0, s_1]), Some([h_0, h_1])) = (density.get(s..s + 2), response.get(h..h + 2)) {
        let (from, to) = (s_0.0.max(h_0.0), s_1.0.min(h_1.0));
        if from < to {
            let at = |f: f64| (f, level(*s_0, *s_1, f) + level(*h_0, *h_1, f));
            power += piece(at(from), at(to));
        }
        if s_1.0 < h_1.0 { s += 1 } else { h += 1 }
    }
    power
}

/// Level of a line between its ends.
fn level((from, y_0): (f64, f64), (to, y_1): (f64, f64), at: f64) -> f64 {
    y_0 + (y_1 - y_0) * (at - from) / (to - from)
}
