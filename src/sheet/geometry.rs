//! Where the ends of a hop stand and what lies between them: all that is needed before anything is known of the air.

use super::missing::Missing;
use super::traced::{Traced, all, read, see, written};
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::geodesy::{self, MEDIAN_K, Position};
use crate::physics::off_axis;
use crate::spec::{Both, Way};
use crate::units::{Degrees, Gigahertz, Given, Metres};

/// The geometry of a hop.
#[derive(Debug, Clone)]
pub(super) struct Geometry {
    /// Where the ends are.
    pub(super) positions: Both<Traced<Position>>,
    /// How high the antennas are above the sea.
    pub(super) altitudes: Both<Traced<Metres>>,
    /// Over the ground.
    pub(super) distance: Traced<Metres>,
    /// From antenna to antenna.
    pub(super) slant: Traced<Metres>,
    /// The true bearing from each end to the other.
    pub(super) bearings: Both<Traced<Degrees>>,
    /// The elevation angle at each end.
    pub(super) elevations: Both<Traced<Degrees>>,
    /// The middle of the two antennas.
    pub(super) mean_altitude: Traced<Metres>,
}

impl Geometry {
    /// That of a hop as it is written.
    pub(super) fn of(resolved: &ResolvedHop<'_>) -> Self {
        let positions = resolved.ends.each_ref().map(position);
        Self::between(positions, resolved.ends.each_ref().map(altitude))
    }

    /// The same with end b moved along the geodesic to a share of the distance, all heights as they are.
    pub(super) fn shortened(&self, share: f64) -> Self {
        let Both { a, b } = &self.positions;
        let nearer = all((b, a)).map(|(there, here)| geodesy::between(here, there, share));
        Self::between(Both { a: a.clone(), b: nearer }, self.altitudes.clone())
    }

    fn between(positions: Both<Traced<Position>>, altitudes: Both<Traced<Metres>>) -> Self {
        // An end without a place of its own is shown at b.
        let at_b = positions.b.spot();
        let geodesic = all((&positions.a, &positions.b))
            .try_map(|(here, there)| geodesy::inverse(here, there).map_err(|why| Missing::new(why, at_b)));
        let distance = geodesic.map(|found| found.distance);
        let Both { a, b } = &altitudes;
        let elevation =
            |own, far| all((&distance, own, far)).map(|(d, own, far)| geodesy::elevation(d, own, far, MEDIAN_K));
        let slant = all((&distance, &positions.a, a, &positions.b, b));
        Self {
            slant: slant.map(|(_, here, low, there, high)| off_axis::slant(here, low, there, high)),
            bearings: Both { a: geodesic.map(|found| found.azimuth), b: geodesic.map(|found| found.back_azimuth) },
            elevations: Both { a: elevation(a, b), b: elevation(b, a) },
            mean_altitude: all((a, b)).map(|(a, b)| Metres(f64::midpoint(a.0, b.0))),
            distance,
            positions,
            altitudes,
        }
    }
}

/// Where an end stands.
pub(super) fn position(end: &ResolvedEnd<'_>) -> Traced<Position> {
    let site = end.site;
    see!(site.position)
        .map(|position| Position { latitude: position.latitude.value, longitude: position.longitude.value })
}

/// Where an antenna stands above sea level.
pub(super) fn altitude(end: &ResolvedEnd<'_>) -> Traced<Metres> {
    let (spec, site) = (end.end, end.site);
    all((&read!(site.ground_height), &read!(spec.height))).map(|(ground, height)| ground + height)
}

/// The centre frequency of a way.
pub(super) fn frequency(resolved: &ResolvedHop<'_>, way: Way) -> Traced<Given<Gigahertz>> {
    let hop = resolved.hop;
    match way {
        Way::AToB => written!(hop.channel.a_to_b),
        Way::BToA => written!(hop.channel.b_to_a),
    }
}
