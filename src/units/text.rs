//! Reading a quantity as a person writes it.
//!
//! A text is a number, an optional space, and one of the unit words of its kind. Fractions (`4 1/2 in`) go with inches,
//! feet and pounds, `51 ft 6 in` is a length, `4/0 AWG` a gauge, and `46°30'44.4" N` a position. Anything else is refused with the
//! part at fault and the line as it should read.

use super::fault::Fault;
use super::kind::{Conversion, Kind, Spelling};
use super::kinds::TUBE;
use super::number::{Form, Number, read_feet_and_inches, read_number, read_sexagesimal, tidy};
use super::tube;

/// Reads `text` as a quantity of `kind`, giving the value in its base unit.
///
/// # Errors
/// No number, no unit, a unit of another kind, or a value outside [`Kind::range`] or finer than [`Kind::grain`].
pub fn read(kind: &Kind, text: &str) -> Result<f64, Fault> {
    if kind.name == TUBE
        && let Some(named) = tube::read(text)
    {
        return named;
    }
    if let Some(value) = read_mixed(kind, text) {
        return in_range(kind, text, tidy(value));
    }
    let number = read_number(text).ok_or_else(|| no_number(kind, text))?;
    let rest = text[number.end..].trim_end();
    let word = rest.trim_start();
    let word_at = number.end + (rest.len() - word.len());
    if word.is_empty() {
        let bare = text.trim();
        return Err(Fault {
            span: 0..text.len(),
            reason: format!("the unit of this {} is missing", kind.name),
            help: format!("write the unit after `{bare}`; accepted here: {}", list(kind)),
            unit: None,
            out_of_range: false,
        });
    }
    let spelling = kind
        .spellings
        .iter()
        .find(|spelling| spelling.words.contains(&word))
        .ok_or_else(|| unknown_unit(kind, text, word_at, word))?;
    if POSITIONS.contains(&kind.name) && word.ends_with(['N', 'S', 'E', 'W']) && text.trim_start().starts_with(SIGNS) {
        let bare = text.trim_start().trim_start_matches(SIGNS).trim();
        return Err(Fault {
            span: 0..text.len(),
            reason: "a sign and a letter both say which hemisphere".into(),
            help: format!("leave out one of them: `{bare}` if the letter is right"),
            unit: None,
            out_of_range: false,
        });
    }
    let value = convert(spelling, number, &text[..number.end], word).ok_or_else(|| no_number(kind, text))?;
    in_range(kind, text, tidy(value))
}

/// Kinds whose letter says what a sign would say.
const POSITIONS: [&str; 2] = ["latitude", "longitude"];

/// What a number may start with besides a digit.
const SIGNS: [char; 3] = ['-', '+', '\u{2212}'];

/// The notations in which number and unit are mixed.
fn read_mixed(kind: &Kind, text: &str) -> Option<f64> {
    match kind.name {
        "latitude" => read_sexagesimal(text, 'N'),
        "longitude" => read_sexagesimal(text, 'E'),
        "length" => read_feet_and_inches(text).map(|inches| inches * 0.0254),
        _ => None,
    }
}

/// Units that are divided by halves and quarters rather than by ten.
const FRACTIONAL: &[&str] = &["in", "\"", "ft", "'", "mi", "lb"];

fn convert(spelling: &Spelling, number: Number, written: &str, word: &str) -> Option<f64> {
    let allowed = match number.form {
        Form::Decimal => true,
        Form::Fraction => FRACTIONAL.contains(&word),
        Form::Noughts => spelling.conversion == Conversion::WireGauge,
    };
    let number = allowed.then_some(number.value)?;
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

fn in_range(kind: &Kind, text: &str, value: f64) -> Result<f64, Fault> {
    let (low, high) = kind.range;
    let fine = value != 0.0 && value.abs() < kind.grain;
    if value.is_finite() && (low..=high).contains(&value) && !fine {
        return Ok(value);
    }
    Err(Fault {
        span: 0..text.len(),
        reason: format!("`{}` is outside the allowed range", text.trim()),
        help: match kind.name {
            "latitude" if value.abs() <= 180.0 => {
                "a latitude is from -90° to 90°: are latitude and longitude swapped?".into()
            }
            _ => format!("{}, for example `{}`", kind.limits([None, None]), kind.example),
        },
        unit: None,
        out_of_range: true,
    })
}

fn no_number(kind: &Kind, text: &str) -> Fault {
    let mended = text.replacen(',', ".", 1);
    let help = match read_number(&mended) {
        Some(_) if text.contains(',') => format!("write a decimal point: `{}`", mended.trim()),
        _ => format!("a number and a unit, for example `{}`", kind.example),
    };
    Fault {
        span: 0..text.len(),
        reason: format!("`{}` is not a valid {}", text.trim(), kind.name),
        help,
        unit: None,
        out_of_range: false,
    }
}

/// Ways of writing a unit that are common and not ours, with the one that is.
const LOOSE: [(&str, &str); 26] = [
    ("Gbps", "Gbit/s"),
    ("Gb/s", "Gbit/s"),
    ("Mbps", "Mbit/s"),
    ("Mb/s", "Mbit/s"),
    ("metre", "m"),
    ("metres", "m"),
    ("meter", "m"),
    ("meters", "m"),
    ("mtr", "m"),
    ("foot", "ft"),
    ("feet", "ft"),
    ("inch", "in"),
    ("inches", "in"),
    ("degree", "deg"),
    ("degrees", "deg"),
    ("\u{ba}", "°"),
    ("Volt", "V"),
    ("volts", "V"),
    ("Watt", "W"),
    ("watts", "W"),
    ("ohms", "ohm"),
    ("mm^2", "mm2"),
    ("sqmm", "mm2"),
    ("lbs", "lb"),
    ("percent", "%"),
    ("kmh", "km/h"),
];

fn unknown_unit(kind: &Kind, text: &str, at: usize, word: &str) -> Fault {
    if word.starts_with(',') {
        return no_number(kind, text);
    }
    let number = text[..at].trim();
    let same_letters = kind.words().find(|known| known.eq_ignore_ascii_case(word));
    let meant = LOOSE.iter().find(|(loose, unit)| *loose == word && kind.words().any(|known| known == *unit));
    let help = match same_letters {
        Some(known) => format!("unit letters keep their case: `{number} {known}`"),
        None if meant.is_some() => {
            let unit = meant.map_or("", |(_, unit)| unit);
            format!("write `{number} {unit}`")
        }
        None if kind.name == "latitude" => "`46.512340 deg`, `46.512340° N` or `46°30'44.4\" N`, S for south".into(),
        None if kind.name == "longitude" => "`171.204560 deg`, `171.204560° E` or `171°12'16.4\" E`, W for west".into(),
        None => format!("accepted here: {}; for example `{}`", list(kind), kind.example),
    };
    let other = super::kinds::ALL
        .iter()
        .filter(|other| other.name != kind.name)
        // `W` is a power to everybody but a longitude.
        .filter(|other| POSITIONS.contains(&kind.name) || !POSITIONS.contains(&other.name))
        .find(|other| other.words().any(|known| known == word));
    let reason = match other {
        Some(other) if same_letters.is_none() => {
            format!("`{word}` is a unit of {}, not of {}", other.name, kind.name)
        }
        _ => format!("`{word}` is not a unit of {}", kind.name),
    };
    let unit = meant.filter(|_| same_letters.is_none()).map(|(_, unit)| *unit);
    Fault { span: at..at + word.len(), reason, help, unit, out_of_range: false }
}

/// The first spelling of every unit, for a help line.
fn list(kind: &Kind) -> String {
    kind.spellings.iter().filter_map(|spelling| spelling.words.first().copied()).collect::<Vec<_>>().join(", ")
}

#[cfg(test)]
mod tests {
    use super::super::{Dbm, Gigahertz, Latitude, Longitude, Metres, Millimetres, Quantity, SquareMillimetres};
    use super::read;

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
        close(value::<Metres>("51 ft 6 in"), 15.6972);
        close(value::<Metres>("51' 6 1/2\""), 15.7099);
        assert!(read(Metres::KIND, "51 ft 13 in").is_err());
        assert!(read(Metres::KIND, "1/2 m").is_err(), "fractions are for inches and feet");
        assert!(read(Metres::KIND, "2/0 ft").is_err());
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
        assert!(read(Latitude::KIND, "-46.5° S").is_err(), "twice south is not north");
        assert!(read(Longitude::KIND, "-9.41° E").is_err());
        assert!(read(Latitude::KIND, "91 deg").is_err());
        assert!(read(Latitude::KIND, "46°30'36\" E").is_err());
    }

    #[test]
    fn a_wrong_unit_is_pointed_at() {
        let fault = read(Metres::KIND, "24.5 GHz").expect_err("GHz is not a valid length");
        assert_eq!(&"24.5 GHz"[fault.span], "GHz");
        assert_eq!(fault.reason, "`GHz` is a unit of frequency, not of length");
        let fault = read(Gigahertz::KIND, "73.5 ghz").expect_err("case matters");
        assert_eq!(fault.help, "unit letters keep their case: `73.5 GHz`");
        let fault = read(Metres::KIND, "24,5 m").expect_err("comma");
        assert_eq!(fault.help, "write a decimal point: `24.5 m`");
        assert!(read(Metres::KIND, "24.5").expect_err("bare").help.contains("accepted here: m,"));
        assert!(read(Metres::KIND, "").is_err() && read(Metres::KIND, "-").is_err());
    }
}
