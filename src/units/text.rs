//! Reading a quantity as a person writes it, and writing one as we print it.
//!
//! A text is a number, an optional space, and one of the unit words of its kind. Fractions (`4 1/2 in`) are read for
//! units of the inch and foot, `4/0 AWG` as a gauge, and `46°30'44.4" N` as a position. Anything else is refused with
//! the part at fault and the line as it should read.

use std::ops::Range;

use super::{Conversion, Kind, Spelling};

/// Why a text is not the quantity it should be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// The part of the text at fault, in bytes.
    pub span: Range<usize>,
    /// What is wrong: one lower-case clause.
    pub reason: String,
    /// How to mend it.
    pub help: String,
}

/// Reads `text` as a quantity of `kind`, giving the value in its base unit.
///
/// # Errors
/// No number, no unit, a unit of another kind, or a value outside [`Kind::range`].
pub fn read(kind: &Kind, text: &str) -> Result<f64, Fault> {
    if let Some(angle) = read_position(kind, text) {
        return in_range(kind, text, angle);
    }
    let (number, rest_at) = read_number(text).ok_or_else(|| no_number(kind, text))?;
    let rest = text[rest_at..].trim_end();
    let word = rest.trim_start();
    let word_at = rest_at + (rest.len() - word.len());
    if word.is_empty() {
        let bare = text.trim();
        return Err(Fault {
            span: 0..text.len(),
            reason: format!("a bare number is no {}: it has no unit", kind.name),
            help: format!("write the unit, for example `{bare} {}`; accepted here: {}", kind.unit, list(kind)),
        });
    }
    let spelling = kind
        .spellings
        .iter()
        .find(|spelling| spelling.words.contains(&word))
        .ok_or_else(|| unknown_unit(kind, text, word_at, word))?;
    let value = convert(spelling, number, &text[..rest_at]).ok_or_else(|| no_number(kind, text))?;
    in_range(kind, text, value)
}

/// A value and its unit as we print them, with a true minus sign left to the pages: `-12.0 dB`, `10.6°`.
#[must_use]
pub fn write(base: f64, decimals: usize, unit: &str) -> String {
    let number = format!("{base:.decimals$}");
    // "-0.0" would read as a negative value.
    let number = match number.strip_prefix('-') {
        Some(digits) if digits.chars().all(|c| c == '0' || c == '.') => digits,
        _ => &number,
    };
    let gap = if unit == "°" { "" } else { " " };
    format!("{number}{gap}{unit}")
}

fn convert(spelling: &Spelling, number: f64, written: &str) -> Option<f64> {
    Some(match spelling.conversion {
        Conversion::Times(factor) => number * factor,
        Conversion::Shifted { offset, factor } => (number + offset) * factor,
        Conversion::Milliwatts(_) if number <= 0.0 => return None,
        Conversion::Milliwatts(milliwatts) => 10.0 * libm::log10(number * milliwatts),
        Conversion::WireGauge => gauge_area(written.trim())?,
    })
}

/// Cross-section of a solid wire by gauge: `d = 0.127 mm × 92^((36 − n)/39)`, with `1/0` as 0 down to `4/0` as −3.
///
/// Source: ASTM B258, the diameter law of the American wire gauge.
fn gauge_area(gauge: &str) -> Option<f64> {
    let n = match gauge.split_once('/') {
        Some((count, "0")) => match count.trim().parse::<u8>().ok()? {
            count @ 1..=4 => 1.0 - f64::from(count),
            _ => return None,
        },
        Some(_) => return None,
        None => f64::from(gauge.parse::<u8>().ok().filter(|n| *n <= 40)?),
    };
    let diameter = 0.127 * libm::pow(92.0, (36.0 - n) / 39.0);
    Some(std::f64::consts::PI / 4.0 * diameter * diameter)
}

/// The number a text starts with and where the rest begins. Knows `12`, `-1.5e3`, `4 1/2` and `1/0`.
fn read_number(text: &str) -> Option<(f64, usize)> {
    let start = text.len() - text.trim_start().len();
    let (negative, digits_at) = match text[start..].chars().next()? {
        '-' => (true, start + 1),
        '\u{2212}' => (true, start + '\u{2212}'.len_utf8()),
        '+' => (false, start + 1),
        _ => (false, start),
    };
    let mut end = digits_at + run(&text[digits_at..], |c| c.is_ascii_digit() || c == '.');
    // An exponent only when digits follow, so that `3 e` stays a unit question.
    if let Some(exponent) = text[end..].strip_prefix(['e', 'E']) {
        let sign = usize::from(exponent.starts_with(['+', '-']));
        let digits = run(&exponent[sign..], |c| c.is_ascii_digit());
        if digits > 0 {
            end += 1 + sign + digits;
        }
    }
    let mut value: f64 = text[digits_at..end].parse().ok()?;
    if let Some((fraction, at)) = read_fraction(text, digits_at, end) {
        value = fraction;
        end = at;
    }
    (value.is_finite()).then_some((if negative { -value } else { value }, end))
}

/// `1/2` from its first digit, or `4 1/2` from its whole part.
fn read_fraction(text: &str, start: usize, whole_end: usize) -> Option<(f64, usize)> {
    let integer = |part: &str| part.parse::<u32>().ok().map(f64::from);
    let over = |numerator: f64, slash_at: usize| {
        let digits = run(&text[slash_at + 1..], |c| c.is_ascii_digit());
        let denominator = integer(&text[slash_at + 1..slash_at + 1 + digits])?;
        // `1/0` is a wire gauge: keep the numerator, the gauge is read from the text.
        let value = if denominator == 0.0 { numerator } else { numerator / denominator };
        Some((value, slash_at + 1 + digits))
    };
    let whole = integer(&text[start..whole_end])?;
    if text[whole_end..].starts_with('/') {
        return over(whole, whole_end);
    }
    let numerator_at = whole_end + run(&text[whole_end..], |c| c == ' ' || c == '-');
    let digits = run(&text[numerator_at..], |c| c.is_ascii_digit());
    let numerator = integer(&text[numerator_at..numerator_at + digits])?;
    if numerator_at == whole_end || !text[numerator_at + digits..].starts_with('/') {
        return None;
    }
    over(numerator, numerator_at + digits).map(|(fraction, end)| (whole + fraction, end))
}

/// Degrees, minutes and seconds with a hemisphere letter, for latitudes and longitudes only.
fn read_position(kind: &Kind, text: &str) -> Option<f64> {
    let positive = match kind.name {
        "latitude" => 'N',
        "longitude" => 'E',
        _ => return None,
    };
    let text = text.trim();
    let letter = text.chars().next_back().filter(|c| "NSEW".contains(*c))?;
    let sign = match (positive, letter) {
        ('N', 'N') | ('E', 'E') => 1.0,
        ('N', 'S') | ('E', 'W') => -1.0,
        _ => return None,
    };
    let mut parts =
        text[..text.len() - 1].split(['°', '\'', '"', '′', '″', ' ']).filter(|part| !part.is_empty() && *part != "deg");
    let (degrees, minutes): (u16, &str) = (parts.next()?.parse().ok()?, parts.next()?);
    let seconds = parts.next().map_or(Some(0.0), |part| part.parse::<f64>().ok())?;
    let minutes: f64 = minutes.parse().ok()?;
    let sound = parts.next().is_none() && (0.0..60.0).contains(&minutes) && (0.0..60.0).contains(&seconds);
    sound.then(|| sign * (f64::from(degrees) + minutes / 60.0 + seconds / 3600.0))
}

fn in_range(kind: &Kind, text: &str, value: f64) -> Result<f64, Fault> {
    let (low, high) = kind.range;
    if value.is_finite() && (low..=high).contains(&value) {
        return Ok(value);
    }
    Err(Fault {
        span: 0..text.len(),
        reason: format!("this {} is outside what is possible here", kind.name),
        help: format!("between {low} {0} and {high} {0}, for example `{1}`", kind.unit, kind.example),
    })
}

fn no_number(kind: &Kind, text: &str) -> Fault {
    let mended = text.replacen(',', ".", 1);
    let help = match read_number(&mended) {
        Some(_) if text.contains(',') => format!("write a decimal point: `{}`", mended.trim()),
        _ => format!("a number and a unit, for example `{}`", kind.example),
    };
    Fault { span: 0..text.len(), reason: format!("`{}` is no {}", text.trim(), kind.name), help }
}

fn unknown_unit(kind: &Kind, text: &str, at: usize, word: &str) -> Fault {
    if word.starts_with(',') {
        return no_number(kind, text);
    }
    let number = text[..at].trim();
    let same_letters = kind.words().find(|known| known.eq_ignore_ascii_case(word));
    let help = match same_letters {
        Some(known) => format!("unit letters keep their case: `{number} {known}`"),
        None => format!("accepted here: {}; for example `{}`", list(kind), kind.example),
    };
    let other =
        super::kinds::ALL.iter().find(|other| other.name != kind.name && other.words().any(|known| known == word));
    let reason = match other {
        Some(other) if same_letters.is_none() => {
            format!("`{word}` is a unit of {}, not of {}", other.name, kind.name)
        }
        _ => format!("`{word}` is no unit of {}", kind.name),
    };
    Fault { span: at..at + word.len(), reason, help }
}

/// The first spelling of every unit, for a help line.
fn list(kind: &Kind) -> String {
    kind.spellings.iter().filter_map(|spelling| spelling.words.first().copied()).collect::<Vec<_>>().join(", ")
}

/// How many bytes at the start of `text` hold characters that `wanted` accepts.
fn run(text: &str, wanted: impl Fn(char) -> bool) -> usize {
    text.find(|c| !wanted(c)).unwrap_or(text.len())
}

#[cfg(test)]
mod tests {
    use super::super::{Dbm, Gigahertz, Latitude, Longitude, Metres, Millimetres, Quantity, SquareMillimetres};
    use super::{read, write};

    fn value<Q: Quantity>(text: &str) -> f64 {
        read(Q::KIND, text).unwrap_or_else(|fault| panic!("{text}: {}", fault.reason))
    }

    fn close(got: f64, expected: f64) {
        assert!((got - expected).abs() < 1e-9, "{got} is not {expected}");
    }

    #[test]
    fn fractions_of_an_inch_are_exact() {
        close(value::<Millimetres>("4 1/2 in"), 114.3);
        close(value::<Millimetres>("4-1/2in"), 114.3);
        close(value::<Millimetres>("3/8 in"), 9.525);
        close(value::<Metres>("12 ft"), 3.6576);
    }

    #[test]
    fn gauges_are_areas() {
        // ASTM B258: 10 AWG is 2.588 mm across, 5.2612 mm²; 4/0 AWG is 107.219 mm².
        assert!((value::<SquareMillimetres>("10 AWG") - 5.2612).abs() < 1e-3);
        assert!((value::<SquareMillimetres>("4/0 AWG") - 107.219_3).abs() < 1e-3);
        assert!(read(SquareMillimetres::KIND, "5/0 AWG").is_err());
        assert!(read(SquareMillimetres::KIND, "10.5 AWG").is_err());
    }

    #[test]
    fn a_power_in_watts_is_a_level() {
        close(value::<Dbm>("100 mW"), 20.0);
        close(value::<Dbm>("1 W"), 30.0);
        assert!(read(Dbm::KIND, "0 W").is_err());
    }

    #[test]
    fn positions_take_a_hemisphere() {
        close(value::<Latitude>("46.5 deg"), 46.5);
        close(value::<Latitude>("46.5° S"), -46.5);
        close(value::<Latitude>("46°30'36\" N"), 46.51);
        close(value::<Longitude>("11 12 0 W"), -11.2);
        assert!(read(Latitude::KIND, "91 deg").is_err());
        assert!(read(Latitude::KIND, "46°30'36\" E").is_err());
    }

    #[test]
    fn a_wrong_unit_is_pointed_at() {
        let fault = read(Metres::KIND, "24.5 GHz").expect_err("GHz is no length");
        assert_eq!(&"24.5 GHz"[fault.span], "GHz");
        assert_eq!(fault.reason, "`GHz` is a unit of frequency, not of length");
        let fault = read(Gigahertz::KIND, "73.5 ghz").expect_err("case matters");
        assert_eq!(fault.help, "unit letters keep their case: `73.5 GHz`");
        let fault = read(Metres::KIND, "24,5 m").expect_err("comma");
        assert_eq!(fault.help, "write a decimal point: `24.5 m`");
        assert!(read(Metres::KIND, "24.5").expect_err("bare").help.contains("`24.5 m`"));
        assert!(read(Metres::KIND, "").is_err() && read(Metres::KIND, "-").is_err());
    }

    #[test]
    fn zero_is_never_negative() {
        assert_eq!(write(-0.01, 1, "dB"), "0.0 dB");
        assert_eq!(write(-0.06, 1, "dB"), "-0.1 dB");
    }
}
