//! What senders do to receivers that are not theirs.
//!
//! Levels at one receiver go in, their sum and what it costs come out; gains of both polarisations make what crossed
//! polarisations keep apart; and from how far away a sender can be heard at all. How far off the axis it lies is
//! `off_axis`, what of it falls into the channel `filter`.

use std::f64::consts::LN_10;

use super::free_space;
use super::geodesy::{EARTH_RADIUS, MEDIAN_K};
use crate::units::{Dbi, Dbm, Decibels, DecibelsPerKilometre, Gigahertz, Metres};

/// Level of several signals together, added as powers: what interferers amount to. None without any, or if nothing is
/// left of them as a power.
///
/// ```text
/// I = 10 lg Σ 10^(I_i / 10)
/// ```
///
/// Source: powers of independent signals add.
pub fn sum(levels: impl IntoIterator<Item = Dbm>) -> Option<Dbm> {
    let power: f64 = levels.into_iter().map(|level| libm::exp10(level.0 / 10.0)).sum();
    (power > 0.0).then(|| Dbm(10.0 * libm::log10(power)))
}

/// What interference takes from the fade margin, `TD`, for its level over the noise, `I - N`.
///
/// ```text
/// TD = 10 lg( 1 + 10^((I - N) / 10) )
/// ```
///
/// Holds for interference that is like noise and does not fade with the wanted signal; both levels in the same
/// bandwidth. Planning allows `I - N` of -10 to -6 dB (common practice, no source).
///
/// Source: powers of independent signals add.
#[must_use]
pub fn degradation(over_noise: Decibels) -> Decibels {
    Decibels(10.0 / LN_10 * libm::log1p(libm::exp10(over_noise.0 / 10.0)))
}

/// Threshold degradation by two sources of interference, from that by each.
///
/// ```text
/// TD = 10 lg( 10^(TD_1 / 10) + 10^(TD_2 / 10) - 1 )
/// ```
///
/// Source: powers of independent signals add.
#[must_use]
pub fn together(one: Decibels, other: Decibels) -> Decibels {
    let more = |degradation: Decibels| libm::expm1(degradation.0 * LN_10 / 10.0);
    Decibels(10.0 / LN_10 * libm::log1p(more(one) + more(other)))
}

/// Carrier over interference that costs a state a `degradation` of its threshold, at the threshold so degraded.
///
/// ```text
/// C/I = (T - N) + x - 10 lg( 10^(x/10) - 1 )        6.87 dB over T - N for x = 1 dB, 3.02 dB for 3 dB
/// ```
///
/// `x` is above 0 dB; at 0 dB no interference is borne, and the result is infinite. Interference counts as noise, which
/// is true of the sum of several; a single one of constant envelope is kinder. What the data sheet says of interference
/// rules where it says anything.
///
/// Source: powers of independent signals add.
#[must_use]
pub fn needed(threshold: Dbm, noise: Dbm, degradation: Decibels) -> Decibels {
    let borne = libm::expm1(degradation.0 * LN_10 / 10.0);
    threshold - noise + degradation - Decibels(10.0 * libm::log10(borne))
}

/// Gain for the other polarisation where the gain for its own is `gain_there`, of an antenna that nobody has measured.
///
/// ```text
/// G_x(φ) = min( G(φ), G_max - XPD )
/// ```
///
/// `discrimination` is that of the data sheet on the axis, `XPD`. Conservative: side lobes keep no polarisation.
///
/// Source: own.
#[must_use]
pub fn cross_polar_gain(gain_there: Dbi, greatest: Dbi, discrimination: Decibels) -> Dbi {
    let leaked = greatest - discrimination;
    if leaked < gain_there { leaked } else { gain_there }
}

/// What opposite linear polarisations of sender and receiver keep apart, `D_pol`. None between like ones.
///
/// ```text
/// D_pol = max( 0, G_t + G_r - 10 lg( 10^((G_t + G_rx) / 10) + 10^((G_tx + G_r) / 10) ) )
/// ```
///
/// Each gain is that towards the other antenna, first for its own polarisation and then for the other (`x`). On both
/// axes with 30 dB each it comes to 27 dB, for power leaks in either antenna; off the axis it soon vanishes.
///
/// Source: powers of independent ways add; own.
#[must_use]
pub fn polarisation_discrimination(sent: [Dbi; 2], heard: [Dbi; 2]) -> Decibels {
    let ([g_t, g_tx], [g_r, g_rx]) = (sent, heard);
    let leaked = libm::exp10((g_t.0 + g_rx.0) / 10.0) + libm::exp10((g_tx.0 + g_r.0) / 10.0);
    Decibels((g_t.0 + g_r.0 - 10.0 * libm::log10(leaked)).max(0.0))
}

/// Greatest distance over which two antennas see each other past a smooth Earth.
///
/// ```text
/// s = √(2 k R) ( √h_1 + √h_2 )        4.12 km √m for k = 4/3
/// ```
///
/// Heights are those over the lowest ground of the network, below which they count as 0. It keeps too many rather than
/// too few: ground and buildings are ignored. What ducts carry beyond it for a short time is not assessed.
///
/// Source: plane geometry; effective radius `k R` after Recommendation ITU-R P.310-10.
#[must_use]
pub fn horizon(one: Metres, other: Metres) -> Metres {
    let root = |height: Metres| height.0.max(0.0).sqrt();
    Metres((2.0 * MEDIAN_K * EARTH_RADIUS.0).sqrt() * (root(one) + root(other)))
}

/// Distance `d` beyond which a sender is heard below a level, whatever its direction.
///
/// ```text
/// E + G_r - 20 lg( 4 π d / λ ) - γ d = floor
/// ```
///
/// `E` is the e.i.r.p., `G_r` the greatest gain of the receiver, `γ` the least loss in gas that may be met: that of the
/// highest antennas. Never less than the exact distance, for the steps towards it come from above.
///
/// Source: Recommendation ITU-R P.525-4, section 2.2; solved by Newton's method, own.
#[must_use]
pub fn culling_distance(
    radiated: Dbm,
    gain: Dbi,
    floor: Dbm,
    frequency: Gigahertz,
    least_gas: DecibelsPerKilometre,
) -> Metres {
    const DECIBELS_PER_E: f64 = 20.0 / LN_10;
    let allowed = (radiated + gain - floor).0;
    // In the logarithm of the distance the loss is convex, so each step from beyond stays beyond.
    let one_metre = free_space::loss(frequency, Metres(1.0)).0;
    let mut log_d = (allowed - one_metre) / DECIBELS_PER_E;
    for _ in 0..STEPS {
        let gas = (least_gas * Metres(libm::exp(log_d))).0;
        let over = one_metre + DECIBELS_PER_E * log_d + gas - allowed;
        if over <= 0.0 {
            break;
        }
        log_d -= over / (DECIBELS_PER_E + gas);
    }
    Metres(libm::exp(log_d))
}

/// Newton's steps: from free space through the thickest oxygen it takes fewer than ten, in the greatest there is fewer
/// than forty.
const STEPS: usize = 100;
