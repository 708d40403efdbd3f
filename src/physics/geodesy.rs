//! Distance and direction between two points of the Earth.
//!
//! On the ground the Earth is the WGS 84 ellipsoid; for the bending of a ray it is a sphere of `k` times the mean
//! radius. Heights are metres above the ellipsoid; heights above mean sea level may stand in, for over the length of a
//! hop both ends are off by the same.

use geographiclib_rs::{DirectGeodesic, Geodesic as Ellipsoid, InverseGeodesic};

use crate::units::{Degrees, Latitude, Longitude, Metres};

/// Mean radius of the Earth.
///
/// Source: Recommendation ITU-R P.452-18, the radius taken for effective-radius work.
pub const EARTH_RADIUS: Metres = Metres(6_371_000.0);

/// Median effective Earth radius factor `k`, for places without data of their own.
///
/// Source: Recommendation ITU-R P.530-18, section 2.2.2.
pub const MEDIAN_K: f64 = 4.0 / 3.0;

/// Two ends nearer than this have no direction worth the name.
const COINCIDENT: Metres = Metres(0.001);

/// A point on the ground, WGS 84.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Position {
    /// North positive.
    pub latitude: Latitude,
    /// East positive.
    pub longitude: Longitude,
}

/// The shortest way along the ellipsoid from one position to another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Geodesic {
    /// Length at height zero.
    pub distance: Metres,
    /// Bearing of the far end seen from the near one, clockwise from true north, at least 0° and below 360°.
    pub azimuth: Degrees,
    /// Bearing of the near end seen from the far one. Meridians converge, so this is not `azimuth` ± 180°.
    pub back_azimuth: Degrees,
}

/// Both ends are the same place, so neither lies in any direction from the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Coincident;

/// Distance `s₁₂` and azimuths `α₁`, `α₂` between two positions: the inverse geodesic problem.
///
/// Holds everywhere, antimeridian, poles and antipodes included, to some nanometres.
///
/// Source: C. F. F. Karney, Algorithms for geodesics, Journal of Geodesy 87 (2013), section 4.
///
/// # Errors
/// The positions are less than a millimetre apart.
pub fn inverse(from: Position, to: Position) -> Result<Geodesic, Coincident> {
    let (s_12, alpha_1, alpha_2, _): (f64, f64, f64, f64) =
        Ellipsoid::wgs84().inverse(from.latitude.0, from.longitude.0, to.latitude.0, to.longitude.0);
    if s_12 < COINCIDENT.0 {
        return Err(Coincident);
    }
    Ok(Geodesic {
        distance: Metres(s_12),
        azimuth: bearing(Degrees(alpha_1)),
        back_azimuth: bearing(Degrees(alpha_2 + 180.0)),
    })
}

/// The position at a share of the geodesic from one position to another; 0.5 is its middle.
///
/// Both ends at one place are their own middle.
///
/// Source: as [`inverse`], the direct problem.
#[must_use]
pub fn between(from: Position, to: Position, share: f64) -> Position {
    let ellipsoid = Ellipsoid::wgs84();
    let (s_12, alpha_1, _, _): (f64, f64, f64, f64) =
        ellipsoid.inverse(from.latitude.0, from.longitude.0, to.latitude.0, to.longitude.0);
    let (latitude, longitude) = ellipsoid.direct(from.latitude.0, from.longitude.0, alpha_1, share * s_12);
    Position { latitude: Latitude(latitude), longitude: Longitude(longitude) }
}

/// Positions along the geodesic from one position to another, at equal steps, both ends among them; `steps` is above zero.
///
/// Source: as [`between`].
#[must_use]
pub fn along(from: Position, to: Position, steps: u32) -> Vec<Position> {
    let ellipsoid = Ellipsoid::wgs84();
    let (s_12, alpha_1, _, _): (f64, f64, f64, f64) =
        ellipsoid.inverse(from.latitude.0, from.longitude.0, to.latitude.0, to.longitude.0);
    let at = |step: u32| {
        let share = f64::from(step) / f64::from(steps);
        let (latitude, longitude) = ellipsoid.direct(from.latitude.0, from.longitude.0, alpha_1, share * s_12);
        Position { latitude: Latitude(latitude), longitude: Longitude(longitude) }
    };
    (0..=steps).map(at).collect()
}

/// Any angle as a bearing: at least 0° and below 360°.
#[must_use]
pub fn bearing(angle: Degrees) -> Degrees {
    let turned = angle.0.rem_euclid(360.0);
    // A very small negative angle rounds up to the full turn.
    Degrees(if turned < 360.0 { turned } else { 0.0 })
}

/// Elevation `ε` of the far antenna over the horizontal of one's own, up positive.
///
/// ```text
/// ε = atan2( r₂ cos θ - r₁,  r₂ sin θ ),   θ = d / (k R),   r = k R + h
/// ```
///
/// Here `d` is the distance along the ground and `k` positive, [`MEDIAN_K`] unless the place has its own. Exact on the
/// sphere, and within 0.001° of the ellipsoid up to 20 km. The two ends differ in more than sign: their elevations sum
/// to `-θ`. At `d = 0` the result is ±90°, or 0° at equal heights.
///
/// Source: plane trigonometry; effective radius `k R` after Recommendation ITU-R P.310-10.
#[must_use]
pub fn elevation(distance: Metres, own_height: Metres, far_height: Metres, k: f64) -> Degrees {
    let radius = k * EARTH_RADIUS.0;
    let theta = distance.0 / radius;
    let (r_1, r_2) = (radius + own_height.0, radius + far_height.0);
    Degrees(libm::atan2(r_2 * libm::cos(theta) - r_1, r_2 * libm::sin(theta)).to_degrees())
}
