//! How much of the Fresnel zone is asked for, at the median `k` and at a low one.

use super::assumption::Assumption;
use super::reason::Reason;
use super::sentence::Figure;
use super::shown::{Radii, Ratio};
use super::traced::{Traced, all, see, written};
use crate::at;
use crate::network::ResolvedHop;
use crate::physics::planning_clearance::{Climate, Obstacle, Shares, low_k, shares};
use crate::place::Place;
use crate::spec::{ClearanceCriteria, Number};
use crate::units::Metres;

/// Criteria where the network names none: those of the Recommendation, for ground that may come near the line anywhere.
pub const CRITERIA: ClearanceCriteria = ClearanceCriteria::Temperate;

/// Fractions of the Fresnel zone that somebody may ask for.
const FRACTIONS: (f64, f64) = (0.0, 10.0);
/// Rays that fall steeper do not reach a hop, and those that follow the Earth for ever are no straight line.
const FACTORS: (f64, f64) = (0.1, 100.0);

/// A share of the Fresnel radius that is asked for, and where.
#[derive(Debug)]
pub(super) struct Share {
    /// The share.
    pub(super) fraction: Traced<f64>,
    /// Where it is written, or would be.
    pub(super) place: Place,
}

/// The clearance asked for.
#[derive(Debug)]
pub(super) struct Asked {
    /// At `k` of 4/3.
    pub(super) median: Share,
    /// At the low `k`.
    pub(super) low: Share,
    /// The low `k`.
    pub(super) low_k: Traced<f64>,
    /// Where the low `k` is written; none where it is that of the length.
    pub(super) low_k_at: Option<Place>,
    /// Nobody chose the criteria.
    assumed: bool,
}

impl Asked {
    pub(super) fn of(resolved: &ResolvedHop<'_>, length: &Traced<Metres>) -> Self {
        let (hop, network) = (resolved.hop, resolved.network);
        let chosen = written!(network.limits.clearance_criteria);
        let named = all((&chosen, length)).map(|(chosen, length)| of_criteria(chosen.unwrap_or(CRITERIA), length));
        let by_name = at!(network.limits.clearance_criteria);
        let share = |field: Traced<&Option<Number>>, own: Place, of: fn(Shares) -> f64| {
            let number = field.check(|number| {
                within(*number, FRACTIONS, |(least, most), value| Reason::ClearanceOutOfRange { least, most, value })
            });
            let place = if number.get() == Some(None) { by_name } else { own };
            Share { fraction: number.and_then(|number| number.map_or_else(|| named.map(of), Traced::constant)), place }
        };
        let limits = &network.limits;
        let assumed =
            limits.clearance_criteria.is_none() && (limits.clearance.is_none() || limits.low_k_clearance.is_none());
        let factors = [see!(hop.climate.low_k), see!(network.climate.low_k)];
        let (low_k, low_k_at) = match Traced::first_written(factors) {
            None => {
                let unwritten = see!(network.climate.low_k);
                (length.map(low_k).decided_by(&unwritten), None)
            }
            Some(written) => {
                let k = written.check(|number| {
                    within(Some(*number), FACTORS, |(least, most), value| Reason::FactorOutOfRange {
                        least,
                        most,
                        value,
                    })
                });
                (k.map(Option::unwrap_or_default), k.first_source())
            }
        };
        Self {
            median: share(see!(network.limits.clearance), at!(network.limits.clearance), |shares| shares.median),
            low: share(see!(network.limits.low_k_clearance), at!(network.limits.low_k_clearance), |shares| shares.low),
            low_k,
            low_k_at,
            assumed,
        }
    }

    /// The fraction asked for at the median, and the low `k` with the one asked for there.
    pub(super) fn both(&self) -> Traced<(f64, (f64, f64))> {
        all((&self.median.fraction, &self.low_k, &self.low.fraction)).map(|(median, k, low)| (median, (k, low)))
    }

    /// What stands in for what nobody chose.
    pub(super) fn assumptions(&self) -> Vec<Assumption> {
        let mut list = Vec::new();
        if let (None, Some(k)) = (self.low_k_at, self.low_k.get()) {
            list.push(Assumption::LowK { k: Figure::of(Ratio(k)) });
        }
        if let (true, Some(median), Some(low)) = (self.assumed, self.median.fraction.get(), self.low.fraction.get()) {
            list.push(Assumption::ClearanceCriteria { median: Figure::of(Radii(median)), low: Figure::of(Radii(low)) });
        }
        list
    }
}

/// The shares that criteria ask for over a path of a length.
fn of_criteria(criteria: ClearanceCriteria, length: Metres) -> Shares {
    match criteria {
        ClearanceCriteria::Temperate => shares(Climate::Temperate, Obstacle::Extended, length),
        ClearanceCriteria::TemperateIsolated => shares(Climate::Temperate, Obstacle::Isolated, length),
        ClearanceCriteria::Tropical => shares(Climate::Tropical, Obstacle::Extended, length),
        ClearanceCriteria::TropicalIsolated => shares(Climate::Tropical, Obstacle::Isolated, length),
        // Common practice, no source.
        ClearanceCriteria::FreeSpace => Shares { median: 0.6, low: 0.0 },
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
