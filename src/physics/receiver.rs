//! The noise in a receiver, and whether a stated threshold can be true.
//!
//! Bandwidth and noise figure go in, the noise level comes out; a constellation then says how far above it the
//! threshold must lie. The threshold of the data sheet rules. What is here catches a figure from another row of it.

use crate::units::{Dbm, Decibels, Megahertz};

/// Boltzmann constant, joules a kelvin, exact by the definition of the kelvin.
pub const BOLTZMANN: f64 = 1.380_649e-23;

/// Temperature noise figures refer to, in kelvin.
const REFERENCE_TEMPERATURE: f64 = 290.0;

/// Share of transmitted bits that are payload, behind [`shannon_limit`].
const CODE_RATE: f64 = 0.9;

/// A threshold this far above that of no coding at all is not this modulation. Common practice, no source.
const SUSPICIOUS: Decibels = Decibels(5.0);

/// Signal over noise, in decibels, for one bit error in a million without coding; by bits a symbol.
///
/// Gray-coded constellations in white noise, computed independently: square ones to half of the last digit, cross ones,
/// of 5, 7, 9 and 11 bits, to 0.2 dB.
const UNCODED: [(u8, Decibels); 11] = [
    (1, Decibels(10.5)),
    (2, Decibels(13.5)),
    (4, Decibels(20.4)),
    (5, Decibels(23.5)),
    (6, Decibels(26.6)),
    (7, Decibels(29.6)),
    (8, Decibels(32.6)),
    (9, Decibels(35.5)),
    (10, Decibels(38.5)),
    (11, Decibels(41.5)),
    (12, Decibels(44.5)),
];

/// Thermal noise at 290 K, `k T B`.
///
/// ```text
/// N = 10 lg( k T B / 1 mW )        -114.0 dBm in one megahertz
/// ```
///
/// Source: definition, with the Boltzmann constant of the SI.
#[must_use]
pub fn thermal_noise(bandwidth: Megahertz) -> Dbm {
    let watts = BOLTZMANN * REFERENCE_TEMPERATURE * bandwidth.0 * 1e6;
    Dbm(10.0 * libm::log10(watts * 1000.0))
}

/// Noise of a receiver, referred to its input.
///
/// ```text
/// N = 10 lg( k T B ) + NF
/// ```
///
/// Source: definition of the noise figure.
#[must_use]
pub fn noise(bandwidth: Megahertz, noise_figure: Decibels) -> Dbm {
    thermal_noise(bandwidth) + noise_figure
}

/// Least signal over noise that can carry a constellation with nine tenths of its bits as payload.
///
/// ```text
/// SNR = 10 lg( 2^(0.9 b) - 1 )
/// ```
///
/// `b` is the bits a symbol carries. No code does better; good ones come within 1 to 2 dB (common practice, no source).
///
/// Source: C. E. Shannon, A mathematical theory of communication (1948), theorem 17.
#[must_use]
pub fn shannon_limit(bits: u8) -> Decibels {
    Decibels(10.0 * libm::log10(libm::exp2(CODE_RATE * f64::from(bits)) - 1.0))
}

/// Signal over noise for one bit error in a million without any code. None for constellations that are not in use.
#[must_use]
pub fn uncoded(bits: u8) -> Option<Decibels> {
    UNCODED.iter().find(|(of, _)| *of == bits).map(|(_, snr)| *snr)
}

/// Least threshold a constellation can have over a receiver's `noise`: no receiver holds below it.
///
/// ```text
/// P_min = N + 10 lg( 2^(0.9 b) - 1 )
/// ```
///
/// Source: [`shannon_limit`].
#[must_use]
pub fn least_threshold(noise: Dbm, bits: u8) -> Dbm {
    noise + shannon_limit(bits)
}

/// Threshold above which it is more likely that of another modulation or bandwidth. None without an [`uncoded`] figure.
///
/// ```text
/// P_max = N + SNR_uncoded + 5 dB
/// ```
///
/// Source: [`uncoded`]; the 5 dB are common practice, no source.
#[must_use]
pub fn greatest_usual_threshold(noise: Dbm, bits: u8) -> Option<Dbm> {
    uncoded(bits).map(|needed| noise + needed + SUSPICIOUS)
}

/// What to think of a stated threshold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Plausibility {
    /// Below [`shannon_limit`] over the noise: no receiver does this.
    Impossible,
    /// Where thresholds lie.
    Plausible,
    /// More than 5 dB above what even no coding needs: more likely the threshold of another modulation or bandwidth.
    Suspicious,
}

/// Whether a threshold can be that of a constellation of `bits` a symbol over a receiver's `noise`.
///
/// Without an [`uncoded`] figure nothing is suspicious.
///
/// Source: [`shannon_limit`] and [`uncoded`]; the 5 dB are common practice, no source.
#[must_use]
pub fn judge_threshold(threshold: Dbm, noise: Dbm, bits: u8) -> Plausibility {
    if threshold < least_threshold(noise, bits) {
        Plausibility::Impossible
    } else if greatest_usual_threshold(noise, bits).is_some_and(|greatest| threshold > greatest) {
        Plausibility::Suspicious
    } else {
        Plausibility::Plausible
    }
}
