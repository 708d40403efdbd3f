//! The air a ray goes through, and what it is when nobody has measured it.
//!
//! A height goes in; pressure, humidity and temperature of the mean year of the globe come out, as
//! [`crate::physics::gas`] wants them: the pressure of the *dry* air, with the water vapour apart. For air that was
//! measured, [`vapour_pressure`] makes that of a relative humidity.

use crate::units::{Celsius, Hectopascals, Metres, Percent};

/// Melting point of ice in kelvin: what separates the two scales.
pub(super) const ICE_POINT: f64 = 273.15;

/// Geopotential heights of the troposphere, in kilometres. The Recommendation starts at sea level; the same law goes on
/// down to the deepest dry land, as in the standard atmosphere it is taken from.
const TROPOSPHERE: std::ops::RangeInclusive<f64> = -1.0..=11.0;

/// A parcel of air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// Pressure of the air without its water vapour, `p`. A barometer shows `p + e`.
    pub dry_pressure: Hectopascals,
    /// Pressure of the water vapour, `e`.
    pub vapour_pressure: Hectopascals,
    /// Temperature.
    pub temperature: Celsius,
}

impl Air {
    /// Absolute temperature `T`, in kelvin.
    #[must_use]
    pub fn kelvin(&self) -> f64 {
        self.temperature.0 + ICE_POINT
    }
}

/// The height is above the troposphere, or below any land.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutsideTroposphere(pub Metres);

/// The mean annual global reference atmosphere at a height `h` above mean sea level.
///
/// ```text
/// h' = 6356.766 h / (6356.766 + h)            geopotential height, km
/// T  = 288.15 - 6.5 h'                        K
/// P  = 1013.25 (288.15 / T)^(-34.1632 / 6.5)  hPa, of the air as a barometer sees it
/// ρ  = 7.5 exp(-h / 2)                        g/m³ of water vapour
/// e  = ρ T / 216.7                            hPa
/// p  = P - e                                  hPa
/// ```
///
/// Holds for `0 ≤ h' ≤ 11` km; used down to -1 km as well, for land below the sea.
///
/// Source: Recommendation ITU-R P.835-7, Annex 1, section 1; `e` by P.676-13, Annex 1, equation (4).
///
/// # Errors
/// The height is outside -1 km to 11 km.
pub fn reference(height: Metres) -> Result<Air, OutsideTroposphere> {
    let h = height.0 / 1000.0;
    let h_geopotential = 6356.766 * h / (6356.766 + h);
    if !TROPOSPHERE.contains(&h_geopotential) {
        return Err(OutsideTroposphere(height));
    }
    let t = 288.15 - 6.5 * h_geopotential;
    let p_total = 1013.25 * libm::pow(288.15 / t, -34.1632 / 6.5);
    let rho = 7.5 * libm::exp(-h / 2.0);
    let e = rho * t / 216.7;
    Ok(Air {
        dry_pressure: Hectopascals(p_total - e),
        vapour_pressure: Hectopascals(e),
        temperature: Celsius(t - ICE_POINT),
    })
}

/// Pressure of the water vapour over liquid water at saturation, `e_s`.
///
/// ```text
/// e_s = EF 6.1121 exp( (18.678 - t/234.5) t / (257.14 + t) )   hPa
/// EF  = 1 + 10^-4 ( 7.2 + P (0.0320 + 5.9 10^-6 t^2) )
/// ```
///
/// `t` in °C, `P` in hectopascals as a barometer sees it. For water from -40 °C to 50 °C; below freezing it is that of
/// supercooled water, not of ice.
///
/// Source: Recommendation ITU-R P.453-14, Annex 1, section 1, equation (9) (equation number and range from memory, not
/// seen).
#[must_use]
pub fn saturation_pressure(temperature: Celsius, pressure: Hectopascals) -> Hectopascals {
    let (t, p) = (temperature.0, pressure.0);
    let ef = 1.0 + 1e-4 * (7.2 + p * (0.0320 + 5.9e-6 * t * t));
    Hectopascals(ef * 6.1121 * libm::exp((18.678 - t / 234.5) * t / (257.14 + t)))
}

/// Pressure of the water vapour at a relative humidity `H`, `e`.
///
/// ```text
/// e = H e_s / 100
/// ```
///
/// Range and source as [`saturation_pressure`].
#[must_use]
pub fn vapour_pressure(humidity: Percent, temperature: Celsius, pressure: Hectopascals) -> Hectopascals {
    Hectopascals(humidity.0 / 100.0 * saturation_pressure(temperature, pressure).0)
}
