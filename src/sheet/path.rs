//! Geometry, air and rain of the path.

use super::air;
use super::geometry::Geometry;
use super::line::{Line, lines};
use super::method::{Method, cited};
use super::missing::Missing;
use super::rain::{self, RainMaps};
use super::reason::Reason;
use super::saying::{Falls, Saying};
use super::shown::{BothWays, Ratio};
use super::target::Target;
use super::traced::{AsTraced as _, Traced, all};
use super::wanted::Wanted;
use crate::at;
use crate::network::ResolvedHop;
use crate::physics::{geodesy, snow};
use crate::spec::{Both, EndName};
use crate::units::{Celsius, Degrees, Given, Hectopascals, Latitude, Longitude, Metres, MillimetresPerHour};

/// How the loss over obstacles is found.
pub(super) const DIFFRACTION: Method =
    cited("ITU-R P.526-15 §4.5.1 over the profile at k = 4/3, §4.1 for a single edge; 0 with 0.55 F1 of clearance");
/// How the worst month follows from the year.
pub(super) const WORST_MONTH: Method =
    cited("ITU-R P.841-6, global planning values, from the outage of the average year");

lines! {
    /// Geometry and air of the path.
    PathLines {
        distance: Metres, "d", "distance over the ground",
            cited("WGS 84 geodesic (Karney 2013)");
        slant: Metres, "s", "distance antenna to antenna",
            cited("WGS 84 chord between antenna centres");
        azimuth_a: Degrees, "α_a", "true bearing from a to b",
            cited("WGS 84 geodesic (Karney 2013)");
        azimuth_b: Degrees, "α_b", "true bearing from b to a",
            cited("WGS 84 geodesic (Karney 2013)");
        elevation_a: Degrees, "ε_a", "elevation angle at a",
            cited("sphere of 4/3 × 6371 km, exact (ITU-R P.530-18 §2.2.2)");
        elevation_b: Degrees, "ε_b", "elevation angle at b",
            cited("sphere of 4/3 × 6371 km, exact (ITU-R P.530-18 §2.2.2)");
        mean_altitude: Metres, "h", "mean altitude of the antennas",
            "mean of the two antenna heights above sea level";
        temperature: Celsius, "T", "air temperature for gas loss",
            cited("reference atmosphere, ITU-R P.835-7 Annex 1");
        dry_pressure: Hectopascals, "p", "dry air pressure",
            cited("reference atmosphere, ITU-R P.835-7 Annex 1");
        vapour_pressure: Hectopascals, "e", "water vapour pressure",
            cited("reference atmosphere, ITU-R P.835-7 Annex 1");
        rain_rate: Given<MillimetresPerHour>, "R0.01", "rain rate exceeded 0.01 % of the year",
            super::line::AS_WRITTEN;
        rain_height: Given<Metres>, "h_R", "mean rain height above sea level", super::line::AS_WRITTEN;
        diffraction: BothWays, "A_d", "diffraction loss", DIFFRACTION;
        middle_latitude: Latitude, "ξ", "latitude of the middle of the path", cited("WGS 84 geodesic (Karney 2013)");
        middle_longitude: Longitude, "", "longitude of the middle of the path", cited("WGS 84 geodesic (Karney 2013)");
        mean_terrain: Metres, "h_t", "mean height of the ground along the path",
            cited("integral over the profile without trees and buildings (ITU-R P.530-18 §2.3.1)");
        snow_factor: Ratio, "F", "what wet snow makes of the rain fade",
            cited("ITU-R P.530-18 §2.4.2 by the distribution of rain heights, at the middle of the path");
        falls: Falls, "", "what falls through the path", cited("ITU-R P.530-18 §2.4.2, by the heights of the antennas");
        rain_source: Saying, "", "source of the rain rate", "rain rate as written, else normals of months, else map";
    }
}

impl PathLines {
    /// The true bearing from an end to the other.
    #[must_use]
    pub fn azimuth(&self, end: EndName) -> &Line<Degrees> {
        match end {
            EndName::A => &self.azimuth_a,
            EndName::B => &self.azimuth_b,
        }
    }

    /// The elevation angle at an end.
    #[must_use]
    pub fn elevation(&self, end: EndName) -> &Line<Degrees> {
        match end {
            EndName::A => &self.elevation_a,
            EndName::B => &self.elevation_b,
        }
    }
}

/// What the ground under a path gives, whatever the air.
#[derive(Clone, Copy)]
pub(super) struct GroundOf<'p> {
    /// What the obstacles cost.
    pub(super) diffraction: &'p Traced<BothWays>,
    /// Its mean height.
    pub(super) mean: &'p Traced<Metres>,
}

impl<'p> GroundOf<'p> {
    /// The ground of a path that has been computed.
    pub(super) fn under(path: &'p PathLines) -> Self {
        Self { diffraction: path.diffraction.traced(), mean: path.mean_terrain.traced() }
    }
}

/// The path of a geometry, in the air of a target, with what stands in its way.
pub(super) fn compute(
    resolved: &ResolvedHop<'_>,
    geometry: &Geometry,
    target: &Target,
    maps: &RainMaps,
    ground: GroundOf<'_>,
) -> PathLines {
    let air = air::lines(&target.air, &geometry.mean_altitude);
    let (rain_rate, rain_source) = rain::lines(resolved, target, maps, &geometry.positions);
    let hop = resolved.hop;
    let no_rain_height = || Missing::judged(Reason::NoRainHeight, at!(hop.climate.rain_height));
    let rain_height = Wanted::written_or(target.rain_height.as_ref(), no_rain_height);
    let Both { a, b } = &geometry.altitudes;
    let falls = all((&rain_height, a, b)).map(|(rain_height, a, b)| Falls {
        ever: snow::precipitation([a, b], rain_height.value),
        in_melting_layer: snow::in_melting_layer([a, b], rain_height.value),
    });
    let snow_factor = all((&rain_height, a, b, &geometry.distance))
        .map(|(rain_height, a, b, distance)| Ratio(snow::factor(snow::middle([a, b], distance), rain_height.value)));
    let Both { a: here, b: there } = &geometry.positions;
    let middle = all((here, there)).map(|(here, there)| geodesy::between(here, there, 0.5));
    let Geometry { distance, slant, bearings, elevations, mean_altitude, .. } = geometry.clone();
    PathLines {
        distance: distance.line(),
        slant: slant.line(),
        azimuth_a: bearings.a.line(),
        azimuth_b: bearings.b.line(),
        elevation_a: elevations.a.line(),
        elevation_b: elevations.b.line(),
        mean_altitude: mean_altitude.line(),
        temperature: air.temperature,
        dry_pressure: air.dry_pressure,
        vapour_pressure: air.vapour_pressure,
        rain_rate,
        rain_height: rain_height.line(),
        diffraction: ground.diffraction.clone().line(),
        middle_latitude: middle.map(|middle| middle.latitude).line(),
        middle_longitude: middle.map(|middle| middle.longitude).line(),
        mean_terrain: ground.mean.clone().line(),
        snow_factor: snow_factor.line(),
        falls: falls.line(),
        rain_source,
    }
}
