//! Wind: from a speed to the pressure it makes.
//!
//! A speed is only a number once it is said what it is: a gust at the antenna itself, a ten-minute mean or a three-second
//! gust ten metres above open ground. They differ by half.

use crate::units::{Metres, MetresPerSecond, Pascals};

/// Density of air that EN 1991-1-4 recommends, 1.25 kg/m³, halved.
const EN_HALF_DENSITY: f64 = 0.625;

/// Half density of ASCE 7 in SI units, for 15 °C at sea level.
const ASCE_HALF_DENSITY: f64 = 0.613;

/// Velocity pressure of a gust, by EN 1991-1-4: `q = 0.625 v²`.
///
/// Source: EN 1991-1-4:2005, 4.5 (from memory, not seen); `q = ρ v² / 2` is physics.
#[must_use]
pub fn pressure_en(gust: MetresPerSecond) -> Pascals {
    Pascals(EN_HALF_DENSITY * gust.0 * gust.0)
}

/// Velocity pressure of a gust, by ASCE 7, all factors one: `q = 0.613 V²`.
///
/// Source: ASCE 7-16, 26.10.2 (from memory, not seen).
#[must_use]
pub fn pressure_asce(gust: MetresPerSecond) -> Pascals {
    Pascals(ASCE_HALF_DENSITY * gust.0 * gust.0)
}

/// How rough the ground is, by EN 1991-1-4 table 4.1.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Terrain {
    /// 0: sea, or coast open to it.
    Sea,
    /// I: lakes, flat land without obstacles.
    Flat,
    /// II: low growth, single trees and buildings.
    Open,
    /// III: villages, suburbs, woods.
    Suburb,
    /// IV: a seventh or more under buildings over 15 m.
    Town,
}

impl Terrain {
    /// Roughness length `z_0` and the height `z_min` below which nothing changes, in metres.
    const fn roughness(self) -> (f64, f64) {
        match self {
            Self::Sea => (0.003, 1.0),
            Self::Flat => (0.01, 1.0),
            Self::Open => (0.05, 2.0),
            Self::Suburb => (0.3, 5.0),
            Self::Town => (1.0, 10.0),
        }
    }
}

/// Peak velocity pressure at a height above the ground, from the basic wind speed `v_b`: the ten-minute mean ten metres
/// above terrain II.
///
/// ```text
/// k_r = 0.19 (z_0 / 0.05)^0.07,   c_r = k_r ln(z / z_0),   I_v = 1 / (c_o ln(z / z_0))
/// q_p = (1 + 7 I_v) 0.625 (c_r c_o v_b)²
/// ```
///
/// `c_o` is 1 on flat ground, else as [`super::orography::factor`] has it; no gap between hills; heights to 200 m.
///
/// Source: EN 1991-1-4:2005, 4.3 to 4.5 (from memory, not seen).
#[must_use]
pub fn peak_pressure_en(basic: MetresPerSecond, height: Metres, terrain: Terrain, orography: f64) -> Pascals {
    let (roughness, least) = terrain.roughness();
    let log = libm::log(height.0.max(least) / roughness);
    let factor = 0.19 * libm::pow(roughness / 0.05, 0.07);
    let mean = factor * log * orography * basic.0;
    Pascals((1.0 + 7.0 / (orography * log)) * EN_HALF_DENSITY * mean * mean)
}

/// How open the ground is, by ASCE 7.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exposure {
    /// B: towns, woods.
    B,
    /// C: open country.
    C,
    /// D: flat, water.
    D,
}

/// Velocity pressure at a height above the ground, from the three-second gust `V` ten metres above exposure C.
///
/// ```text
/// K_z = 2.01 (max(z, 4.57 m) / z_g)^(2/α),   q = 0.613 K_z V²
/// α, z_g:  B 7.0, 365.76 m   C 9.5, 274.32 m   D 11.5, 213.36 m
/// ```
///
/// Topography and direction factors are one.
///
/// Source: ASCE 7-16, table 26.10-1 (from memory, not seen); that of 2022 has other constants and other maps, and speed and
/// edition belong together: its pressures are lower by 1.8 % at 10 m and 5.1 % at 60 m in exposure B, 0.2 % and 1.4 % in C.
#[must_use]
pub fn pressure_asce_at(gust: MetresPerSecond, height: Metres, exposure: Exposure) -> Pascals {
    let (alpha, gradient) = match exposure {
        Exposure::B => (7.0, 365.76),
        Exposure::C => (9.5, 274.32),
        Exposure::D => (11.5, 213.36),
    };
    let factor = 2.01 * libm::pow(height.0.max(4.57) / gradient, 2.0 / alpha);
    Pascals(factor * pressure_asce(gust).0)
}
