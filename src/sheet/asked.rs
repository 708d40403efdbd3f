//! How much of the Fresnel zone is asked for, at the median `k` and at a low one.

use super::reason::Reason;
use super::traced::{Traced, see};
use crate::network::ResolvedHop;
use crate::spec::Number;

/// Fraction of the first Fresnel zone below which an obstacle costs level: Recommendation ITU-R P.526-15, section 2.
pub const CLEARANCE: f64 = 0.6;
/// The same at the low `k`: Recommendation ITU-R P.530-18, section 2.2.2, temperate climate, extended obstacle (from
/// memory).
pub const LOW_K_CLEARANCE: f64 = 0.3;

/// Fractions of the Fresnel zone that somebody may ask for.
const FRACTIONS: (f64, f64) = (0.0, 10.0);
/// Rays that fall steeper do not reach a hop, and those that follow the Earth for ever are no straight line.
const FACTORS: (f64, f64) = (0.1, 100.0);

/// The clearance asked for.
#[derive(Debug)]
pub(super) struct Asked {
    /// Fraction of `F1` at `k` of 4/3.
    pub(super) fraction: Traced<f64>,
    /// The low `k`, if one is given.
    pub(super) low_k: Traced<Option<f64>>,
    /// Fraction of `F1` at the low `k`.
    pub(super) low_fraction: Traced<f64>,
}

impl Asked {
    pub(super) fn of(resolved: &ResolvedHop<'_>) -> Self {
        let (hop, network) = (resolved.hop, resolved.network);
        let fraction = |field: Traced<&Option<Number>>, default: f64| {
            let written = field.check(|number| {
                within(*number, FRACTIONS, |(least, most), value| Reason::ClearanceOutOfRange { least, most, value })
            });
            written.map(|written| written.unwrap_or(default))
        };
        let factors = [see!(hop.climate.low_k), see!(network.climate.low_k)];
        let low_k = match Traced::first_written(factors) {
            None => see!(network.climate.low_k).map(|_| None),
            Some(written) => written.check(|number| {
                within(Some(*number), FACTORS, |(least, most), value| Reason::FactorOutOfRange { least, most, value })
            }),
        };
        Self {
            fraction: fraction(see!(network.limits.clearance), CLEARANCE),
            low_fraction: fraction(see!(network.limits.low_k_clearance), LOW_K_CLEARANCE),
            low_k,
        }
    }

    /// The low `k` with the fraction asked for at it, if one is given.
    pub(super) fn low(&self) -> Traced<Option<(f64, f64)>> {
        self.low_k.and_then(|k| match k {
            None => Traced::constant(None),
            Some(k) => self.low_fraction.map(|fraction| Some((k, fraction))),
        })
    }
}

/// A number that a person wrote without unit, in its range.
fn within(
    number: Option<Number>,
    range: (f64, f64),
    outside: impl FnOnce((f64, f64), f64) -> Reason,
) -> Result<Option<f64>, Reason> {
    match number.map(|number| number.0) {
        Some(value) if !(range.0..=range.1).contains(&value) => Err(outside(range, value)),
        value => Ok(value),
    }
}
