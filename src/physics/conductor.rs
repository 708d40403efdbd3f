//! Wire: its resistance, its size and its substitutes.
//!
//! A cross-section and a temperature go in, ohms for each kilometre of one conductor come out. Sizes are compared as
//! areas; gauge numbers, which run backwards, are for printing.

use std::f64::consts::PI;

use crate::units::{Celsius, OhmsPerKilometre, Percent, SquareMillimetres};

/// Resistivity of annealed copper at 20 °C, `ρ`, in Ω·mm²/m.
///
/// Source: IEC 60028, international standard of resistance for copper.
pub const COPPER_RESISTIVITY: f64 = 1.0 / 58.0;

/// Growth of that resistance for each kelvin, `α`, at constant mass.
///
/// Source: IEC 60028.
pub const COPPER_TEMPERATURE_COEFFICIENT: f64 = 0.003_93;

/// Conductivity of conductor aluminium over that of copper.
///
/// Source: IEC 60889 (28.264 nΩ·m).
pub const ALUMINIUM_CONDUCTIVITY: f64 = 0.61;

/// How far, in gauges, a wire may fall short of an area and still pass for it: 16 AWG is 1.309 mm² and sold as 1.31.
const GAUGE_SLACK: f64 = 0.01;

/// Resistance for each kilometre of one copper conductor, solid or of strands with this sum of areas.
///
/// ```text
/// r = ρ / A · (1 + α (t - 20 °C))
/// ```
///
/// Holds over the temperatures a cable bears. A metric size is nominal, its standard limits resistance and not area, so
/// a stranded conductor may have more: IEC 60228 allows 7.41 Ω/km at 2.5 mm², where this gives 6.90.
///
/// Source: IEC 60028.
#[must_use]
pub fn resistance_per_km(area: SquareMillimetres, temperature: Celsius) -> OhmsPerKilometre {
    OhmsPerKilometre(1000.0 * COPPER_RESISTIVITY / area.0 * temperature_factor(temperature))
}

/// The copper cross-section that has a resistance for each kilometre at 20 °C.
///
/// ```text
/// A = ρ / r
/// ```
///
/// Source: IEC 60028, [`resistance_per_km`] solved for the area.
#[must_use]
pub fn area_of(at_20: OhmsPerKilometre) -> SquareMillimetres {
    SquareMillimetres(1000.0 * COPPER_RESISTIVITY / at_20.0)
}

/// Resistance of copper at a temperature over that at 20 °C: the temperature of the cable, not of the air.
///
/// ```text
/// R_t / R_20 = 1 + α (t - 20 °C)
/// ```
///
/// Linear from 20 °C, as the standard has it, over the temperatures a cable bears.
///
/// Source: IEC 60028.
#[must_use]
pub fn temperature_factor(temperature: Celsius) -> f64 {
    1.0 + COPPER_TEMPERATURE_COEFFICIENT * (temperature.0 - 20.0)
}

/// Resistance of copper-clad aluminium over that of copper of the same size, for its share of copper by volume, `x`.
///
/// ```text
/// factor = 1 / ( x + 0.61 (1 - x) )
/// ```
///
/// The usual shares are 10 % and 15 %. An estimate: metals side by side, as if both lay straight along the wire.
///
/// Source: rule of mixtures, with aluminium by IEC 60889.
#[must_use]
pub fn copper_clad_aluminium_factor(copper: Percent) -> f64 {
    let x = copper.0 / 100.0;
    1.0 / (x + ALUMINIUM_CONDUCTIVITY * (1.0 - x))
}

/// American wire gauge of a solid wire, `n`; 0 is 1/0, -3 is 4/0, and metric sizes fall between.
///
/// ```text
/// d = √(4 A / π),   n = 36 - 39 ln(d / 0.127 mm) / ln 92
/// ```
///
/// Gauges go from 40 to 4/0; beyond, the law runs on. No area at all is gauge plus infinity.
///
/// Source: ASTM B258, the diameter law, solved for the gauge.
#[must_use]
pub fn gauge(area: SquareMillimetres) -> f64 {
    let d = (4.0 * area.0 / PI).sqrt();
    36.0 - 39.0 * libm::log(d / 0.127) / libm::log(92.0)
}

/// The thinnest whole gauge that is no thinner than an area, as printed: `10 AWG`, `2/0 AWG`. None beyond 4/0.
#[must_use]
pub fn gauge_at_least(area: SquareMillimetres) -> Option<String> {
    let n = (gauge(area) + GAUGE_SLACK).floor().min(40.0);
    match n {
        ..-3.0 => None,
        ..1.0 => Some(format!("{}/0 AWG", 1.0 - n)),
        _ => Some(format!("{n} AWG")),
    }
}
