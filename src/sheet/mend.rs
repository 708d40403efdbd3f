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
    let (length, whole) = (path.distance.get()?, path);
    let good = |share: f64| {
        let mut path = path::with_share(resolved, target, maps, share);
        path.diffraction = whole.diffraction.clone();
        let [one, other] = [true, false].map(|a_sends| budget::compute(resolved, &path, target, a_sends));
        let loud = [&one, &other].iter().any(|way| way.margins.overload_in_hand.get().is_none_or(|left| left.0 < 0.0));
        (passes([&one, &other]) == Some(true), loud)
    };
    let (mut low, mut high) = (1.0 / length.0.max(1.0), 1.0);
    if !good(low).0 {
        return None;
    }
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        if good(middle).0 { low = middle } else { high = middle }
    }
    let shorter = Metres((length.0 * low).floor()).rounded_down();
    let (passes, loud) = good(shorter.0 / length.0);
    (shorter.0 >= 1.0 && passes && !loud).then_some(shorter)
}
