//! Quantities as the plain numbers of a table, and back.
//!
//! Digits that somebody wrote are kept. What had to be converted has 7 decimals of a degree, 2 of a metre, and of anything
//! else as many of six as are not nought.

use crate::units::{Conversion, Kind, read};

/// The decimals of a kind where a number was converted; `None` where as many are written as are needed.
fn decimals(kind: &Kind) -> Option<usize> {
    match kind.name {
        "latitude" | "longitude" => Some(7),
        "length" => Some(2),
        _ => None,
    }
}

/// A computed number.
#[must_use]
pub fn computed(kind: &Kind, value: f64) -> String {
    decimals(kind).map_or_else(|| trimmed(value), |decimals| without_minus_nought(format!("{value:.decimals$}")))
}

/// A number with as many of six decimals as are not nought.
#[must_use]
pub fn trimmed(value: f64) -> String {
    let text = format!("{value:.6}");
    without_minus_nought(text.trim_end_matches('0').trim_end_matches('.').to_owned())
}

/// A number with so many decimals.
#[must_use]
pub fn fixed(value: f64, decimals: usize) -> String {
    without_minus_nought(format!("{value:.decimals$}"))
}

/// A number of any size with six digits that count, and no noughts behind them.
#[must_use]
pub fn significant(value: f64) -> String {
    let size = if value == 0.0 { 0.0 } else { libm::floor(libm::log10(libm::fabs(value))) };
    let decimals = (0_u8..=15).find(|decimals| f64::from(*decimals) + size >= 5.0).unwrap_or(15);
    let text = format!("{value:.0$}", usize::from(decimals));
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    without_minus_nought(text.to_owned())
}

fn without_minus_nought(text: String) -> String {
    match text.strip_prefix('-') {
        Some(digits) if digits.chars().all(|c| matches!(c, '0' | '.')) => digits.to_owned(),
        _ => text,
    }
}

/// The number of a quantity as its author wrote it, in the base unit of its kind: the digits that stand there, or what they
/// come to. `None` where it cannot be read.
#[must_use]
pub fn as_written(kind: &Kind, words: &str) -> Option<String> {
    let value = read(kind, words).ok()?;
    let words = words.trim();
    let end = words.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | '-' | '+'))).unwrap_or(words.len());
    let (digits, unit) = (words[..end].trim_start_matches('+'), words[end..].trim());
    let plain = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    let bare = digits.trim_start_matches('-');
    let is_plain = bare.split_once('.').map_or_else(|| plain(bare), |(whole, rest)| plain(whole) && plain(rest));
    let spelling = kind.spellings.iter().find(|spelling| spelling.words.contains(&unit));
    let factor = spelling.map(|spelling| spelling.conversion);
    Some(match factor {
        Some(Conversion::Times(1.0)) if is_plain => without_minus_nought(digits.to_owned()),
        Some(Conversion::Times(-1.0)) if is_plain && !digits.starts_with('-') => {
            without_minus_nought(format!("-{digits}"))
        }
        _ => computed(kind, value),
    })
}

/// A plain number and the unit of its column as a person writes them: `47.115310° N`, `17.4 m`.
#[must_use]
pub fn in_words(kind: &Kind, number: &str, unit: &str) -> String {
    let letters = match kind.name {
        "latitude" => Some(('N', 'S')),
        "longitude" => Some(('E', 'W')),
        _ => None,
    };
    let letters = letters.filter(|_| matches!(unit, "°" | "deg"));
    match (letters, number.strip_prefix('-')) {
        (Some((_, behind)), Some(digits)) => format!("{digits}° {behind}"),
        (Some((ahead, _)), None) => format!("{number}° {ahead}"),
        (None, _) if unit == "°" => format!("{number}°"),
        (None, _) => format!("{number} {unit}"),
    }
}

#[cfg(test)]
mod tests {
    use super::{as_written, in_words, significant};
    use crate::units::{Dbm, Latitude, Longitude, Metres, Millimetres, Quantity as _};

    #[test]
    fn digits_are_kept_and_what_is_converted_is_rounded() {
        for (kind, words, number) in [
            (Latitude::KIND, "47.115310° N", "47.115310"),
            (Latitude::KIND, "-47.1 deg", "-47.1"),
            (Longitude::KIND, "9.41° W", "-9.41"),
            (Latitude::KIND, "47°06'55.1\" N", "47.1153056"),
            (Metres::KIND, "17.40 m", "17.40"),
            (Metres::KIND, "51 ft 6 in", "15.70"),
            (Metres::KIND, "1014 m", "1014"),
            (Millimetres::KIND, "4 1/2 in", "114.3"),
            (Dbm::KIND, "100 mW", "20"),
            (Longitude::KIND, "0° W", "0"),
        ] {
            assert_eq!(as_written(kind, words).as_deref(), Some(number), "{words}");
        }
        assert_eq!(as_written(Metres::KIND, "17 GHz"), None);
    }

    #[test]
    fn computed_numbers_have_the_digits_that_count() {
        for (value, text) in
            [(0.000_123_456_7, "0.000123457"), (1234.5, "1234.5"), (-0.0, "0"), (1_234_567.8, "1234568"), (1e-20, "0")]
        {
            assert_eq!(significant(value), text);
        }
    }

    #[test]
    fn numbers_become_what_a_person_would_write() {
        assert_eq!(in_words(Latitude::KIND, "-47.10", "deg"), "47.10° S");
        assert_eq!(in_words(Longitude::KIND, "162.1", "°"), "162.1° E");
        assert_eq!(in_words(Metres::KIND, "17.40", "m"), "17.40 m");
    }
}
