//! The gain of an antenna over its band.
//!
//! An aperture of one efficiency gains 6 dB more at twice the frequency, so that the two halves of a duplex pair differ as
//! well: 1.1 dB between 73 and 83 GHz. What the maker states by frequency is better known, and rules where it is stated.

use super::antenna::gain_over;
use crate::units::{Dbi, Gigahertz};

/// Gain at a frequency, from that at another one.
///
/// ```text
/// G(f) = G(f₀) + 20 lg(f / f₀)
/// ```
///
/// Holds as far as the efficiency of the aperture is the same, which within a band it is to some tenths of a decibel.
///
/// Source: gain of an aperture, `G = η (π D / λ)²`.
#[must_use]
pub fn scaled(gain: Dbi, stated_at: Gigahertz, frequency: Gigahertz) -> Dbi {
    gain + gain_over(frequency, stated_at)
}

/// Gain at a frequency, from those stated at several: straight between two of them, [`scaled`] from the nearest outside. None
/// where none is stated.
///
/// Source: straight line between stated values; gain of an aperture outside of them.
#[must_use]
pub fn by_frequency(stated: &[(Gigahertz, Dbi)], frequency: Gigahertz) -> Option<Dbi> {
    let nearest = |below: bool| {
        let side = stated.iter().filter(|(at, _)| if below { *at <= frequency } else { *at >= frequency });
        side.min_by(|one, other| (one.0 - frequency).0.abs().total_cmp(&(other.0 - frequency).0.abs()))
    };
    match (nearest(true), nearest(false)) {
        (Some((low, from)), Some((high, to))) if low < high => {
            let share = (frequency - *low).0 / (*high - *low).0;
            Some(Dbi(from.0 + (to.0 - from.0) * share))
        }
        (Some((at, gain)), _) | (None, Some((at, gain))) => Some(scaled(*gain, *at, frequency)),
        (None, None) => None,
    }
}
