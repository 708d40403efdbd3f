//! The quantities themselves: one line of facts each.
//!
//! Ranges are deliberately wide: they catch slips (a height of 3,000 km, a gain of 400 dBi, a wire of no area), not bad
//! design. `no finer than` is the least there can be of it besides nothing at all: what is finer is a slip too, and would
//! only turn up as an infinity further on. Conversion
//! factors are the exact SI definitions (inch 25.4 mm, pound 0.45359237 kg, standard gravity 9.80665 m/s²).

use super::kind::Conversion::{Milliwatts, Shifted, Times, WireGauge};
use super::kind::{Kind, Spelling};
use super::print;
use super::quantity::Quantity;

macro_rules! quantity {
    ($(
        $(#[$doc:meta])*
        $type:ident: $name:literal in $unit:literal, decimals $decimals:literal, like $example:literal,
        from $low:literal to $high:literal, no finer than $grain:literal, written $($conversion:expr => $($word:literal)|+),+;
    )+) => {
        $(
            $(#[$doc])*
            #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
            pub struct $type(pub f64);

            impl Quantity for $type {
                const KIND: &'static Kind = &Kind {
                    name: $name,
                    unit: $unit,
                    example: $example,
                    range: ($low, $high),
                    grain: $grain,
                    spellings: &[$(Spelling { words: &[$($word),+], conversion: $conversion }),+],
                };
                const DECIMALS: usize = $decimals;

                fn new(base: f64) -> Self {
                    Self(base)
                }

                fn base(self) -> f64 {
                    self.0
                }
            }

            impl std::fmt::Display for $type {
                fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                    f.write_str(&print::write(self.0, f.precision().unwrap_or($decimals), $unit))
                }
            }
        )+

        /// Every kind there is.
        pub(super) const ALL: &[&Kind] = &[$($type::KIND),+];
    };
}

quantity! {
    /// A length or height.
    Metres: "length" in "m", decimals 1, like "24.5 m", from -1000.0 to 1_000_000.0, no finer than 0.000_001, written
        Times(1.0) => "m", Times(1000.0) => "km", Times(0.01) => "cm", Times(0.001) => "mm",
        Times(0.3048) => "ft" | "'", Times(0.0254) => "in" | "\"", Times(1609.344) => "mi";
    /// How much something grows in a year.
    MetresPerYear: "growth" in "m/year", decimals 2, like "0.4 m/year", from 0.0 to 10.0, no finer than 0.000_1, written
        Times(1.0) => "m/year", Times(0.01) => "cm/year";
    /// A clearance in radii of the first Fresnel zone; no key takes one, a waiver accepts one.
    FresnelRadii: "clearance" in "F1", decimals 2, like "0.4 F1", from -100_000.0 to 100_000.0, no finer than 0.0, written
        Times(1.0) => "F1";
    /// A diameter or thickness.
    Millimetres: "diameter" in "mm", decimals 1, like "114.3 mm", from 0.0 to 10000.0, no finer than 0.001, written
        Times(1.0) => "mm", Times(10.0) => "cm", Times(1000.0) => "m", Times(25.4) => "in" | "\"";
    /// The metal cross-section of one conductor.
    SquareMillimetres: "conductor size" in "mm²", decimals 2, like "16 mm2", from 0.001 to 1000.0, no finer than 0.001, written
        Times(1.0) => "mm²" | "mm2", WireGauge => "AWG";
    /// An area facing the wind.
    SquareMetres: "area" in "m²", decimals 3, like "0.07 m2", from 0.000_1 to 100.0, no finer than 0.000_1, written
        Times(1.0) => "m²" | "m2", Times(0.000_1) => "cm²" | "cm2", Times(0.092_903_04) => "ft²" | "ft2";
    /// An angle.
    Degrees: "angle" in "°", decimals 2, like "-12 deg", from -360.0 to 360.0, no finer than 0.000_001, written
        Times(1.0) => "°" | "deg";
    /// Geographic latitude, north positive, WGS 84.
    Latitude: "latitude" in "°", decimals 6, like "46.512340 deg", from -90.0 to 90.0, no finer than 0.0, written
        Times(1.0) => "°" | "deg" | "° N" | "°N" | "N" | "deg N", Times(-1.0) => "° S" | "°S" | "S" | "deg S";
    /// Geographic longitude, east positive, WGS 84.
    Longitude: "longitude" in "°", decimals 6, like "171.204560 deg", from -180.0 to 180.0, no finer than 0.0, written
        Times(1.0) => "°" | "deg" | "° E" | "°E" | "E" | "deg E", Times(-1.0) => "° W" | "°W" | "W" | "deg W";
    /// A carrier frequency.
    Gigahertz: "frequency" in "GHz", decimals 3, like "73.5 GHz", from 1.0 to 1000.0, no finer than 1.0, written
        Times(1.0) => "GHz", Times(0.001) => "MHz";
    /// A channel bandwidth.
    Megahertz: "bandwidth" in "MHz", decimals 0, like "500 MHz", from 0.1 to 20000.0, no finer than 0.1, written
        Times(1.0) => "MHz", Times(1000.0) => "GHz";
    /// A power level, referred to one milliwatt.
    Dbm: "power level" in "dBm", decimals 1, like "14 dBm", from -150.0 to 100.0, no finer than 0.0, written
        Times(1.0) => "dBm", Milliwatts(1.0) => "mW", Milliwatts(1000.0) => "W";
    /// A ratio of powers: a loss, a margin, a tolerance.
    Decibels: "level difference" in "dB", decimals 1, like "4 dB", from -1000.0 to 1000.0, no finer than 0.000_001, written
        Times(1.0) => "dB";
    /// The gain of an antenna over an isotropic one.
    Dbi: "antenna gain" in "dBi", decimals 1, like "43.5 dBi", from -20.0 to 80.0, no finer than 0.0, written
        Times(1.0) => "dBi";
    /// Loss for each kilometre of path.
    DecibelsPerKilometre: "specific attenuation" in "dB/km", decimals 2, like "14.7 dB/km", from 0.0 to 10000.0, no finer than 0.000_001, written
        Times(1.0) => "dB/km", Times(1000.0) => "dB/m", Times(10.0) => "dB/100m";
    /// A voltage.
    Volts: "voltage" in "V", decimals 2, like "48 V", from -1000.0 to 1000.0, no finer than 0.000_1, written
        Times(1.0) => "V", Times(0.001) => "mV";
    /// Voltage of a power line.
    LineVolts: "voltage of a power line" in "kV", decimals 1, like "20 kV", from 0.0 to 2000.0, no finer than 0.001, written
        Times(1.0) => "kV", Times(0.001) => "V";
    /// The peak of an impulse of voltage.
    ImpulseVolts: "impulse voltage" in "kV", decimals 2, like "1.5 kV", from 0.0 to 1000.0, no finer than 0.001, written
        Times(1.0) => "kV", Times(0.001) => "V";
    /// The peak of an impulse of current.
    Kiloamperes: "impulse current" in "kA", decimals 2, like "2.5 kA", from 0.0 to 1000.0, no finer than 0.001, written
        Times(1.0) => "kA", Times(0.001) => "A";
    /// What a voltmeter shows while aligning: some millivolts a decibel, so to the millivolt.
    MeterVolts: "meter reading" in "V", decimals 3, like "0.412 V", from -100.0 to 100.0, no finer than 0.000_1, written
        Times(1.0) => "V", Times(0.001) => "mV";
    /// Electric power.
    Watts: "power" in "W", decimals 1, like "25 W", from 0.001 to 100_000.0, no finer than 0.001, written
        Times(1.0) => "W", Times(1000.0) => "kW", Times(0.001) => "mW";
    /// A current.
    Amperes: "current" in "A", decimals 2, like "0.6 A", from 0.0 to 1000.0, no finer than 0.000_001, written
        Times(1.0) => "A", Times(0.001) => "mA";
    /// A resistance.
    Ohms: "resistance" in "Ω", decimals 2, like "0.5 ohm", from 0.0 to 1_000_000.0, no finer than 0.000_1, written
        Times(1.0) => "Ω" | "ohm" | "\u{2126}", Times(0.001) => "mΩ" | "mohm", Times(1000.0) => "kΩ" | "kohm";
    /// Resistance for each kilometre of one conductor.
    OhmsPerKilometre: "resistance per length" in "Ω/km", decimals 1, like "93.8 ohm/km", from 0.001 to 100_000.0, no finer than 0.001, written
        Times(1.0) => "Ω/km" | "ohm/km" | "\u{2126}/km", Times(10.0) => "Ω/100m" | "ohm/100m" | "\u{2126}/100m";
    /// A rain rate, one-minute integration.
    MillimetresPerHour: "rain rate" in "mm/h", decimals 1, like "32 mm/h", from 0.0 to 300.0, no finer than 0.001, written
        Times(1.0) => "mm/h", Times(25.4) => "in/h";
    /// A depth of rain over a month.
    RainDepth: "rain depth" in "mm", decimals 1, like "52 mm", from 0.0 to 10000.0, no finer than 0.001, written
        Times(1.0) => "mm", Times(10.0) => "cm", Times(25.4) => "in" | "\"";
    /// Liquid water in the air, as in fog.
    GramsPerCubicMetre: "water content" in "g/m³", decimals 2, like "0.05 g/m3", from 0.0 to 100.0, no finer than 0.000_1, written
        Times(1.0) => "g/m³" | "g/m3";
    /// A temperature.
    Celsius: "temperature" in "°C", decimals 0, like "40 °C", from -90.0 to 200.0, no finer than 0.0, written
        Times(1.0) => "°C" | "C" | "degC", Shifted { offset: -32.0, factor: 5.0 / 9.0 } => "°F" | "F" | "degF";
    /// A difference of temperatures.
    Kelvins: "temperature difference" in "K", decimals 0, like "20 K", from 0.0 to 200.0, no finer than 0.001, written
        Times(1.0) => "K";
    /// An inductance.
    Microhenries: "inductance" in "µH", decimals 1, like "4.5 µH", from 0.0 to 100_000.0, no finer than 0.000_001, written
        Times(1.0) => "µH" | "uH";
    /// A share of time or of a whole.
    Percent: "percentage" in "%", decimals 4, like "99.99 %", from 0.0 to 100.0, no finer than 0.000_001, written
        Times(1.0) => "%";
    /// A payload or line rate.
    MegabitsPerSecond: "data rate" in "Mbit/s", decimals 0, like "1 Gbit/s", from 0.001 to 1_000_000.0, no finer than 0.001, written
        Times(1.0) => "Mbit/s", Times(1000.0) => "Gbit/s";
    /// A mass.
    Kilograms: "mass" in "kg", decimals 1, like "4.2 kg", from 0.001 to 10000.0, no finer than 0.001, written
        Times(1.0) => "kg", Times(0.001) => "g", Times(0.453_592_37) => "lb";
    /// Mass of a volume.
    KilogramsPerCubicMetre: "density" in "kg/m³", decimals 0, like "900 kg/m3", from 1.0 to 3000.0, no finer than 1.0, written
        Times(1.0) => "kg/m³" | "kg/m3";
    /// A tightening torque.
    NewtonMetres: "torque" in "N·m", decimals 1, like "16 N·m", from 0.01 to 2000.0, no finer than 0.01, written
        Times(1.0) => "N·m" | "N.m" | "Nm", Times(1.355_817_948_331_400_4) => "lbf·ft" | "lbf.ft",
        Times(0.112_984_829_027_616_7) => "lbf·in" | "lbf.in";
    /// A wind speed.
    MetresPerSecond: "speed" in "m/s", decimals 1, like "31 m/s", from 0.1 to 150.0, no finer than 0.1, written
        Times(1.0) => "m/s", Times(1.0 / 3.6) => "km/h", Times(0.447_04) => "mph", Times(1852.0 / 3600.0) => "kn";
    /// A force.
    Newtons: "force" in "N", decimals 0, like "250 N", from 0.0 to 1_000_000.0, no finer than 0.001, written
        Times(1.0) => "N", Times(1000.0) => "kN";
    /// What the wind presses with.
    Pascals: "wind pressure" in "Pa", decimals 0, like "600 Pa", from 0.0 to 100_000.0, no finer than 0.001, written
        Times(1.0) => "Pa", Times(1000.0) => "kPa";
    /// A stress or strength.
    Megapascals: "stress" in "MPa", decimals 1, like "235 MPa", from 0.0 to 10000.0, no finer than 0.000_1, written
        Times(1.0) => "MPa" | "N/mm²" | "N/mm2", Times(6.894_757_293_168_361) => "ksi";
    /// An elastic modulus.
    Gigapascals: "elastic modulus" in "GPa", decimals 0, like "210 GPa", from 0.0 to 1000.0, no finer than 0.001, written
        Times(1.0) => "GPa";
    /// Power through an area.
    WattsPerSquareMetre: "power density" in "W/m²", decimals 2, like "10 W/m2", from 0.0 to 1_000_000.0, no finer than 0.000_001, written
        Times(1.0) => "W/m²" | "W/m2", Times(10.0) => "mW/cm²" | "mW/cm2";
    /// Air pressure or partial pressure.
    Hectopascals: "pressure" in "hPa", decimals 1, like "1013.25 hPa", from 300.0 to 1200.0, no finer than 300.0, written
        Times(1.0) => "hPa" | "mbar", Times(10.0) => "kPa";
    /// Days past a day; no key takes one, a waiver accepts some.
    Days: "number of days" in "d", decimals 0, like "14 d", from 0.0 to 100_000.0, no finer than 1.0, written
        Times(1.0) => "d";
    /// A span of time between failures, of repairs, of what a battery bridges.
    Hours: "time span" in "h", decimals 1, like "8 h", from 0.0 to 100_000_000.0, no finer than 0.000_1, written
        Times(1.0) => "h", Times(1.0 / 60.0) => "min", Times(24.0) => "d", Times(8760.0) => "years" | "year";
    /// How late something arrives.
    Milliseconds: "delay" in "ms", decimals 3, like "0.12 ms", from 0.0 to 100_000.0, no finer than 0.000_001, written
        Times(1.0) => "ms", Times(0.001) => "µs" | "us", Times(1000.0) => "s";
    /// A span of time, for outages.
    Minutes: "duration" in "min", decimals 1, like "52.6 min", from 0.0 to 1_000_000.0, no finer than 0.000_001, written
        Times(1.0) => "min", Times(1.0 / 60.0) => "s", Times(60.0) => "h";
}

/// What a tube measures outside: a diameter that may also be written as the name of a size.
pub(super) const TUBE: &str = "tube diameter";

const OF_TUBES: &Kind = &Kind {
    name: TUBE,
    unit: Millimetres::KIND.unit,
    example: Millimetres::KIND.example,
    range: Millimetres::KIND.range,
    grain: Millimetres::KIND.grain,
    spellings: Millimetres::KIND.spellings,
};

impl Kind {
    /// The kind with this name, as the schema's `x-quantity` gives it.
    #[must_use]
    pub fn named(name: &str) -> Option<&'static Self> {
        ALL.iter().copied().chain([OF_TUBES]).find(|kind| kind.name == name)
    }
}
