//! What would mend a hop that misses its objective, found by trying it on the sheet's own physics.

use super::budget::{self, Direction};
use super::path::{self, PathLines};
use super::rain::RainMaps;
use super::target::Target;
use crate::network::ResolvedHop;
use crate::units::{Metres, Quantity as _};

/// Lengths of the hop at which it would pass; `None` while it does, and where no length would do.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Mends {
    /// For the availability asked for.
    pub availability_distance: Option<Metres>,
    /// For the fade margin asked for, in both directions.
    pub margin_distance: Option<Metres>,
}

pub(super) fn of(
    resolved: &ResolvedHop<'_>,
    target: &Target,
    maps: &RainMaps,
    path: &PathLines,
    directions: [&Direction<'_>; 2],
) -> Mends {
    let shorter = |passes: &dyn Fn([&Direction<'_>; 2]) -> Option<bool>| {
        (!passes(directions)?).then(|| shorter(resolved, target, maps, path, passes)).flatten()
    };
    Mends {
        availability_distance: shorter(&|[one, other]| {
            let service = path::service(one, other, target);
            Some(service.availability.get()? >= target.availability.value())
        }),
        margin_distance: shorter(&|directions| {
            let wanted = target.fade_margin.as_ref()?.value();
            let margins = directions.map(|direction| direction.margins.fade_margin.get());
            let [one, other] = margins;
            Some(one? >= wanted && other? >= wanted)
        }),
    }
}

/// The greatest length, rounded down, at which it passes without overloading a receiver.
fn shorter(
    resolved: &ResolvedHop<'_>,
    target: &Target,
    maps: &RainMaps,
    path: &PathLines,
    passes: &dyn Fn([&Direction<'_>; 2]) -> Option<bool>,
) -> Option<Metres> {
    let whole = path.distance.get()?;
    let good = |share: f64| {
        let path = path::with_share(resolved, target, maps, share);
        let [one, other] = budget::both(resolved, &path, target);
        let loud = [&one, &other].iter().any(|way| way.margins.overload_in_hand.get().is_none_or(|left| left.0 < 0.0));
        (passes([&one, &other]) == Some(true), loud)
    };
    // Whole metres: what passes at one and fails at the next is known to the metre it is printed to.
    let (mut low, mut high) = (1.0, whole.0.ceil());
    if !good(low / whole.0).0 {
        return None;
    }
    while high - low > 1.0 {
        let middle = f64::midpoint(low, high).floor();
        if good(middle / whole.0).0 { low = middle } else { high = middle }
    }
    let length = Metres(low).rounded_down();
    let (passes, loud) = good(length.0 / whole.0);
    (length.0 >= 1.0 && passes && !loud).then_some(length)
}
