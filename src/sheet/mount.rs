//! What a bracket gives in tilt, and how else it could be mounted to give enough.

use super::path::{PathLines, altitude};
use crate::network::ResolvedEnd;
use crate::physics::geodesy::{self, MEDIAN_K};
use crate::spec::{Bracket, Orientation, Tilt, Window};
use crate::units::{Degrees, Metres};

/// Least and greatest tilt, up positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reach {
    /// Steepest down.
    pub least: Degrees,
    /// Steepest up.
    pub most: Degrees,
}

impl Reach {
    /// Whether a tilt can be set.
    #[must_use]
    pub fn holds(&self, tilt: Degrees) -> bool {
        self.least <= tilt && tilt <= self.most
    }
}

/// A way to mount a bracket.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TiltMend {
    /// Which way up.
    pub orientation: Orientation,
    /// With the extension plate.
    pub plate: bool,
    /// What it gives then.
    pub reach: Reach,
}

/// The tilt a bracket gives, mounted in a certain way. Upside down, the upright range is mirrored unless another is given.
pub(super) fn reach(bracket: &Bracket, orientation: Orientation, plate: bool) -> Reach {
    let of = |window: &Window<Degrees>| Reach { least: window.min.value, most: window.max.value };
    let turned = |tilt: &Tilt| match (orientation, &tilt.inverted) {
        (Orientation::Upright, _) => of(&tilt.upright),
        (Orientation::Inverted, Some(inverted)) => of(inverted),
        (Orientation::Inverted, None) => Reach { least: -tilt.upright.max.value, most: -tilt.upright.min.value },
    };
    match (&bracket.plate, &bracket.stop) {
        (Some(fitted), _) if plate => turned(&fitted.tilt),
        (_, Some(stop)) => {
            let free = turned(&bracket.tilt);
            Reach { least: if free.least < stop.value { stop.value } else { free.least }, ..free }
        }
        _ => turned(&bracket.tilt),
    }
}

/// The other ways to mount the same bracket that reach the tilt, fewest parts first.
pub(super) fn tilt_mends(own: &ResolvedEnd<'_>, needed: Degrees) -> Vec<TiltMend> {
    let (bracket, present) = (&own.bracket.spec, &own.end.bracket);
    let plates: &[bool] = if bracket.plate.is_some() { &[false, true] } else { &[false] };
    let ways = plates.iter().flat_map(|plate| {
        [Orientation::Upright, Orientation::Inverted].map(|orientation| TiltMend {
            orientation,
            plate: *plate,
            reach: reach(bracket, orientation, *plate),
        })
    });
    ways.filter(|way| way.reach.holds(needed))
        .filter(|way| (way.orientation, way.plate) != (present.orientation, present.plate))
        .collect()
}

/// How much this antenna must rise for its tilt to come to the nearest end of the reach; bisected over the exact formula.
pub(super) fn height_mend(
    own: &ResolvedEnd<'_>,
    far: &ResolvedEnd<'_>,
    path: &PathLines,
    reach: Reach,
    needed: Degrees,
) -> Option<Metres> {
    let distance = path.distance.get()?;
    let (own_altitude, far_altitude) = (altitude(own).0, altitude(far).0);
    let goal = if needed < reach.least { reach.least } else { reach.most };
    let tilt_at = |rise: f64| geodesy::elevation(distance, own_altitude + Metres(rise), far_altitude, MEDIAN_K);
    // A higher antenna looks further down, so the tilt falls as it rises.
    let most = 2.0 * (far_altitude - own_altitude).0.abs() + distance.0;
    let (mut low, mut high) = (-most, most);
    if tilt_at(low) < goal || tilt_at(high) > goal {
        return None;
    }
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if tilt_at(middle) > goal { low = middle } else { high = middle }
    }
    Some(Metres(high))
}
