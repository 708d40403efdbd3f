//! Where a compass points, and how far to trust it.
//!
//! A place and a day go in; the declination by the World Magnetic Model 2025 and its uncertainty come out. The model
//! runs for five years: a date outside them is refused, not extrapolated. It knows the field of the Earth's core alone
//! and nothing of steel masts.

use world_magnetic_model::time::{Date, Month};
use world_magnetic_model::uom::si::angle::degree;
use world_magnetic_model::uom::si::f32::{Angle, Length};
use world_magnetic_model::uom::si::length::meter;
use world_magnetic_model::uom::si::magnetic_flux_density::nanotesla;
use world_magnetic_model::{Error, GeomagneticField};

use super::geodesy::{Position, bearing};
use crate::units::{Degrees, Metres};

/// Years of the model: 2025.0 up to, but without, 2030.0.
pub const YEARS: std::ops::Range<i32> = 2025..2030;

/// Horizontal field, in nanotesla, below which declination is refused (the blackout zone).
pub const BLACKOUT: f64 = 2000.0;

/// Horizontal field, in nanotesla, below which a compass wants care (the caution zone).
const CAUTION: f64 = 6000.0;

/// What the model says of one place on one day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Declination {
    /// Magnetic north as seen from true north, `D`, east positive.
    pub angle: Degrees,
    /// One standard deviation of `angle`, the model against a compass in the open.
    pub uncertainty: Degrees,
    /// The place lies in the caution zone, where a compass may be wrong by more.
    pub caution: bool,
}

/// Why there is no declination.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MagneticError {
    /// The calendar has no such day.
    NoSuchDate(i32, u8, u8),
    /// The day is before or after the years of the model.
    OutsideModel(i32, u8, u8),
    /// The height is not within -1 km to 850 km.
    Height(Metres),
    /// The latitude or longitude is not one.
    Position(Position),
    /// The horizontal field, in nanotesla, is too weak for a compass.
    Blackout(f64),
}

/// Magnetic declination `D` at a height above the ellipsoid, on a day given as year, month and day.
///
/// ```text
/// D = atan2(Y, X),   H = √(X² + Y²)
/// σ_D = √( 0.26² + (5417 / H)² )   degrees, H in nT
/// ```
///
/// `X` and `Y` are the north and east parts of the field, a sum of spherical harmonics to degree 12. They are summed in
/// single precision, which costs less than 0.001° and is far inside `σ_D`.
///
/// Source: The US/UK World Magnetic Model for 2025–2030, technical report of NOAA NCEI and the British Geological
/// Survey: field in section 1.2, zones in 1.8, error model in 3.4.
///
/// # Errors
/// No such date or position; a date outside 2025 to 2029; a height outside -1 km to 850 km; the blackout zone.
pub fn declination(
    position: Position,
    height: Metres,
    (year, month, day): (i32, u8, u8),
) -> Result<Declination, MagneticError> {
    let no_such_date = MagneticError::NoSuchDate(year, month, day);
    let date = Month::try_from(month)
        .ok()
        .and_then(|month| Date::from_calendar_date(year, month, day).ok())
        .ok_or(no_such_date)?;
    // The library would quietly take its older model for earlier years.
    if !YEARS.contains(&year) {
        return Err(MagneticError::OutsideModel(year, month, day));
    }
    let field = GeomagneticField::new(
        Length::new::<meter>(single(height.0)),
        Angle::new::<degree>(single(position.latitude.0)),
        Angle::new::<degree>(single(position.longitude.0)),
        date,
    )
    .map_err(|error| match error {
        Error::DateOutsideOfValidityRange { .. } => MagneticError::OutsideModel(year, month, day),
        Error::HeightOutsideOfValidityRange { .. } => MagneticError::Height(height),
        Error::InvalidLatitude | Error::InvalidLongitude => MagneticError::Position(position),
    })?;

    let h = f64::from(field.h().get::<nanotesla>());
    if h < BLACKOUT {
        return Err(MagneticError::Blackout(h));
    }
    Ok(Declination {
        angle: Degrees(f64::from(field.declination().get::<degree>())),
        uncertainty: Degrees(libm::hypot(0.26, 5417.0 / h)),
        caution: h < CAUTION,
    })
}

#[expect(clippy::cast_possible_truncation, reason = "the model is summed in single precision")]
fn single(value: f64) -> f32 {
    value as f32
}

/// The bearing a compass shows for a true bearing, at least 0° and below 360°.
///
/// ```text
/// magnetic = true - D
/// ```
///
/// Source: definition of declination, east positive.
#[must_use]
pub fn magnetic_bearing(true_bearing: Degrees, declination: Degrees) -> Degrees {
    bearing(true_bearing - declination)
}
