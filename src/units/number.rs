//! The number at the start of a quantity: `12`, `-1.5e3`, `4 1/2`, `2/0`; and the two notations that mix number and unit,
//! `51 ft 6 in` and `46°30'44.4" N`.

/// A number and what kind of notation it was.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Number {
    /// Its value. For a gauge of several noughts, how many.
    pub value: f64,
    /// Where the rest of the text begins.
    pub end: usize,
    /// How it was written.
    pub form: Form,
}

/// How a number was written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Form {
    /// `12`, `-1.5`, `1.5e3`.
    Decimal,
    /// `1/2` or `4 1/2`: for inches.
    Fraction,
    /// `2/0`: a wire gauge of two noughts.
    Noughts,
}

/// The number a text starts with.
pub(super) fn read_number(text: &str) -> Option<Number> {
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
    let value: f64 = text[digits_at..end].parse().ok()?;
    let plain = Number { value, end, form: Form::Decimal };
    let number = read_fraction(text, digits_at, end).unwrap_or(plain);
    let value = if negative { -number.value } else { number.value };
    value.is_finite().then_some(Number { value, ..number })
}

/// `1/2` from its first digit, or `4 1/2` from its whole part.
fn read_fraction(text: &str, start: usize, whole_end: usize) -> Option<Number> {
    let whole = integer(&text[start..whole_end])?;
    if text[whole_end..].starts_with('/') {
        return over(text, whole, whole_end);
    }
    let numerator_at = whole_end + run(&text[whole_end..], |c| c == ' ' || c == '-');
    let digits = run(&text[numerator_at..], |c| c.is_ascii_digit());
    let numerator = integer(&text[numerator_at..numerator_at + digits])?;
    if numerator_at == whole_end || !text[numerator_at + digits..].starts_with('/') {
        return None;
    }
    let part = over(text, numerator, numerator_at + digits)?;
    (part.form == Form::Fraction).then_some(Number { value: whole + part.value, ..part })
}

/// The numerator over what follows the slash.
fn over(text: &str, numerator: f64, slash_at: usize) -> Option<Number> {
    let digits = run(&text[slash_at + 1..], |c| c.is_ascii_digit());
    let end = slash_at + 1 + digits;
    let denominator = integer(&text[slash_at + 1..end])?;
    Some(if denominator == 0.0 {
        Number { value: numerator, end, form: Form::Noughts }
    } else {
        Number { value: numerator / denominator, end, form: Form::Fraction }
    })
}

fn integer(part: &str) -> Option<f64> {
    part.parse::<u32>().ok().map(f64::from)
}

/// `51 ft 6 in` or `51' 6 1/2"`, in inches. Inches run below twelve.
pub(super) fn read_feet_and_inches(text: &str) -> Option<f64> {
    let feet = read_number(text).filter(|number| number.form == Form::Decimal && number.value.fract() == 0.0)?;
    let rest = text[feet.end..].trim_start();
    let rest = rest.strip_prefix("ft").or_else(|| rest.strip_prefix('\''))?;
    let inches = read_number(rest).filter(|number| (0.0..12.0).contains(&number.value))?;
    let unit = rest[inches.end..].trim();
    let whole = feet.value.abs() * 12.0 + inches.value;
    (inches.form != Form::Noughts && matches!(unit, "in" | "\"")).then_some(whole.copysign(feet.value))
}

/// Degrees, minutes and seconds with a hemisphere letter, in degrees. `positive` is `N` or `E`.
pub(super) fn read_sexagesimal(text: &str, positive: char) -> Option<f64> {
    let text = text.trim();
    let letter = text.chars().next_back()?;
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

/// The nearest number of twelve significant digits: what a person meant whose sums and inches are exact in decimals.
#[expect(clippy::float_cmp, reason = "the same to the last bit, or it is printed and read")]
pub(super) fn tidy(value: f64) -> f64 {
    // Printing and reading is slow. Whole millionths, so nearly all that people write, are such a number as they are.
    if value.abs() < 1e5 && (value * 1e6).round() / 1e6 == value {
        return value;
    }
    format!("{value:.11e}").parse().unwrap_or(value)
}

/// How many bytes at the start of `text` hold characters that `wanted` accepts.
fn run(text: &str, wanted: impl Fn(char) -> bool) -> usize {
    text.find(|c| !wanted(c)).unwrap_or(text.len())
}
