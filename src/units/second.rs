//! The same value in the other system of units, for crews whose tape or wrench is marked in it.
//!
//! A matter of printing, not of physics: exact factors, each value converted from the unrounded one.

use super::tube::is_name;
use super::{Given, Kilograms, Latitude, Longitude, Metres, Millimetres, NewtonMetres, Quantity, print};

/// A kind that crews measure in either system.
pub trait TwoSystems: Quantity {
    /// Symbol of the imperial unit, its size in the metric base unit, and the decimals printed.
    const IMPERIAL: (&'static str, f64, usize);
}

impl TwoSystems for Metres {
    const IMPERIAL: (&'static str, f64, usize) = ("ft", 0.3048, 1);
}

impl TwoSystems for Millimetres {
    const IMPERIAL: (&'static str, f64, usize) = ("in", 25.4, 2);
}

impl TwoSystems for Kilograms {
    const IMPERIAL: (&'static str, f64, usize) = ("lb", 0.453_592_37, 1);
}

impl TwoSystems for NewtonMetres {
    const IMPERIAL: (&'static str, f64, usize) = ("lbf·ft", 1.355_817_948_331_400_4, 1);
}

/// Words in one system as they stand, the other system in brackets: `17.4 m (57.1 ft)`, `103 ft (31.4 m)`.
fn with_second<Q: TwoSystems>(words: &str, value: Q) -> String {
    let (unit, size, decimals) = Q::IMPERIAL;
    if is_name(words) {
        return format!("{words}: {value} ({})", print::write(value.base() / size, decimals, unit));
    }
    let imperial = ["ft", "in", "'", "\"", "mi", "lbf"].iter().any(|mark| {
        words.trim_start_matches(|c: char| c.is_ascii_digit() || " .+-/\u{2212}".contains(c)).starts_with(mark)
    });
    if imperial {
        format!("{words} ({value})")
    } else {
        format!("{words} ({})", print::write(value.base() / size, decimals, unit))
    }
}

/// A written value in both systems, the author's words first.
#[must_use]
pub fn given_in_both<Q: TwoSystems>(given: &Given<Q>) -> String {
    with_second(&given.to_string(), given.value)
}

/// A computed value in both systems, metric first.
#[must_use]
pub fn in_both<Q: TwoSystems>(value: Q) -> String {
    with_second(&value.to_string(), value)
}

/// A computed value in both systems, imperial first: `57.1 ft (17.4 m)`.
#[must_use]
pub fn in_both_imperial_first<Q: TwoSystems>(value: Q) -> String {
    let (unit, size, decimals) = Q::IMPERIAL;
    format!("{} ({value})", print::write(value.base() / size, decimals, unit))
}

/// Degrees, minutes and tenths of a second with the letter of the hemisphere: `47°06'55.1" N`.
fn sexagesimal(degrees: f64, positive: char, negative: char) -> String {
    let letter = if degrees < 0.0 { negative } else { positive };
    // Rounded once, at the tenth of a second, so that 59.96" carries into the minute.
    let tenths = (degrees.abs() * 36_000.0).round();
    let (whole, rest) = ((tenths / 36_000.0).floor(), tenths % 36_000.0);
    let (minutes, seconds) = ((rest / 600.0).floor(), (rest % 600.0) / 10.0);
    format!("{whole:.0}°{minutes:02.0}'{seconds:04.1}\" {letter}")
}

/// A latitude in degrees, minutes and seconds.
#[must_use]
pub fn latitude_in_seconds(latitude: Latitude) -> String {
    sexagesimal(latitude.0, 'N', 'S')
}

/// A longitude in degrees, minutes and seconds.
#[must_use]
pub fn longitude_in_seconds(longitude: Longitude) -> String {
    sexagesimal(longitude.0, 'E', 'W')
}

#[cfg(test)]
mod tests {
    use super::{in_both, in_both_imperial_first, latitude_in_seconds, longitude_in_seconds, with_second};
    use crate::units::{Latitude, Longitude, Metres, Millimetres, NewtonMetres};

    #[test]
    fn the_other_system_stands_in_brackets() {
        assert_eq!(in_both(Metres(17.4)), "17.4 m (57.1 ft)");
        assert_eq!(in_both_imperial_first(Metres(17.4)), "57.1 ft (17.4 m)");
        assert_eq!(with_second("103 ft", Metres(31.394_4)), "103 ft (31.4 m)");
        assert_eq!(with_second("4 1/2 in", Millimetres(114.3)), "4 1/2 in (114.3 mm)");
        assert_eq!(with_second("NPS 2 1/2", Millimetres(73.03)), "NPS 2 1/2: 73.0 mm (2.88 in)");
        assert_eq!(with_second("22 lbf·ft", NewtonMetres(29.828)), "22 lbf·ft (29.8 N·m)");
        assert_eq!(with_second("30 N·m", NewtonMetres(30.0)), "30 N·m (22.1 lbf·ft)");
    }

    #[test]
    fn seconds_carry() {
        assert_eq!(latitude_in_seconds(Latitude(47.115_31)), "47°06'55.1\" N");
        assert_eq!(longitude_in_seconds(Longitude(-79.999_999_9)), "80°00'00.0\" W");
    }
}
