//! Straight lines from antenna to antenna, and how far off the aim of one another lies.
//!
//! Positions with their heights become points in the frame that turns with the Earth; two lines from one of them enclose
//! an angle. Refraction bends both lines alike and is left out. What is measured along the ground is in `geodesy`.

use super::geodesy::Position;
use crate::units::{Degrees, Metres};

/// How far along its aim [`EarthCentred::ahead`] lies: far enough for the angle to be exact, near enough for metres to
/// keep their last digits.
const AHEAD: f64 = 10_000.0;

/// A point of space, in metres from the middle of the Earth: WGS 84.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EarthCentred([f64; 3]);

impl EarthCentred {
    /// A point at a height over the ellipsoid, `r`.
    ///
    /// ```text
    /// r = ( (N + h) cos φ cos λ,  (N + h) cos φ sin λ,  (N (1 - e²) + h) sin φ )
    /// N = a / √(1 - e² sin² φ),   a = 6 378 137 m,   e² = f (2 - f),   1/f = 298.257 223 563
    /// ```
    ///
    /// Holds everywhere. Heights above mean sea level may stand in, for over the length of a hop both ends are off by the
    /// same.
    ///
    /// Source: NGA.STND.0036, World Geodetic System 1984, geodetic to Earth-centred coordinates.
    #[must_use]
    pub fn of(position: Position, height: Metres) -> Self {
        const A: f64 = 6_378_137.0;
        const F: f64 = 1.0 / 298.257_223_563;
        const E_2: f64 = F * (2.0 - F);
        let (sin_phi, cos_phi) = libm::sincos(position.latitude.0.to_radians());
        let (sin_lambda, cos_lambda) = libm::sincos(position.longitude.0.to_radians());
        let n = A / (1.0 - E_2 * sin_phi * sin_phi).sqrt();
        let h = height.0;
        Self([(n + h) * cos_phi * cos_lambda, (n + h) * cos_phi * sin_lambda, (n * (1.0 - E_2) + h) * sin_phi])
    }

    /// A point on the line of aim of an antenna whose bearing and elevation are known and whose partner is not.
    ///
    /// ```text
    /// r + 10 km ( cos ε (sin β · east + cos β · north) + sin ε · up )
    /// ```
    ///
    /// The bearing `β` runs clockwise from true north, the elevation `ε` up from the horizontal at the antenna. Holds
    /// everywhere but at the poles, which have no north.
    ///
    /// Source: definition of the local frame, north and up along the ellipsoid and away from it.
    #[must_use]
    pub fn ahead(position: Position, height: Metres, bearing: Degrees, elevation: Degrees) -> Self {
        let (sin_phi, cos_phi) = libm::sincos(position.latitude.0.to_radians());
        let (sin_lambda, cos_lambda) = libm::sincos(position.longitude.0.to_radians());
        let (sin_beta, cos_beta) = libm::sincos(bearing.0.to_radians());
        let (up, along) = libm::sincos(elevation.0.to_radians());
        let (east, north) = (along * sin_beta, along * cos_beta);
        let Self([x, y, z]) = Self::of(position, height);
        Self([
            x + AHEAD * (-sin_lambda * east - sin_phi * cos_lambda * north + cos_phi * cos_lambda * up),
            y + AHEAD * (cos_lambda * east - sin_phi * sin_lambda * north + cos_phi * sin_lambda * up),
            z + AHEAD * (cos_phi * north + sin_phi * up),
        ])
    }

    /// How far another point is, straight through whatever lies between.
    #[must_use]
    pub fn distance(self, other: Self) -> Metres {
        let [x, y, z] = self.towards(other);
        Metres(libm::hypot(libm::hypot(x, y), z))
    }

    /// The coordinates, in metres: through latitude 0° longitude 0°, through 0° 90° E, through the north pole.
    #[must_use]
    pub const fn as_array(self) -> [f64; 3] {
        self.0
    }

    fn towards(self, other: Self) -> [f64; 3] {
        let (Self([x_1, y_1, z_1]), Self([x_2, y_2, z_2])) = (self, other);
        [x_2 - x_1, y_2 - y_1, z_2 - z_1]
    }
}

/// Straight-line distance `s` from antenna to antenna.
///
/// ```text
/// s = |r₂ - r₁|
/// ```
///
/// with `r` of [`EarthCentred::of`]. Holds everywhere. Two points one above the other are their difference in height
/// apart.
///
/// Source: as [`EarthCentred::of`].
#[must_use]
pub fn slant(from: Position, from_height: Metres, to: Position, to_height: Metres) -> Metres {
    EarthCentred::of(from, from_height).distance(EarthCentred::of(to, to_height))
}

/// The angle `φ` at one antenna between what it is aimed at and something else, 0° to 180°.
///
/// ```text
/// φ = atan2( |a × b|, a · b ),   a = aimed_at - own,   b = other - own
/// ```
///
/// Exact for small angles too, where the arc cosine loses its digits. Where either point is the antenna itself there is
/// no angle, and the result is 0°.
///
/// Source: plane trigonometry; own.
#[must_use]
pub fn off_axis(own: EarthCentred, aimed_at: EarthCentred, other: EarthCentred) -> Degrees {
    let ([a_x, a_y, a_z], [b_x, b_y, b_z]) = (own.towards(aimed_at), own.towards(other));
    let (x, y, z) = (a_y * b_z - a_z * b_y, a_z * b_x - a_x * b_z, a_x * b_y - a_y * b_x);
    let cross = libm::hypot(libm::hypot(x, y), z);
    Degrees(libm::atan2(cross, a_x * b_x + a_y * b_y + a_z * b_z).to_degrees())
}
