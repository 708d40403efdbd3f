//! The designation of an emission: how wide it is, in three numerals and a letter.

use crate::units::Megahertz;

/// A necessary bandwidth as three numerals and one letter, which stands for the decimal point and says the unit: `500M`,
/// `28M0`, `2G00`.
///
/// The first character is neither nought nor K, M or G, so three digits that count are written, the last one rounded.
///
/// Source: ITU Radio Regulations, Appendix 1, section I, §2 (text and examples seen).
#[must_use]
pub fn necessary_bandwidth(width: Megahertz) -> Option<String> {
    let hertz = width.0 * 1e6;
    if !(0.001..=999e9).contains(&hertz) {
        return None;
    }
    // Below a hertz the letter leads, so that it is no nought that does.
    if hertz < 0.999_5 {
        return Some(format!("H{:03}", rounded(hertz * 1000.0)));
    }
    [('H', 1.0), ('K', 1e3), ('M', 1e6), ('G', 1e9)].into_iter().find_map(|(letter, unit)| {
        let value = hertz / unit;
        let (scale, whole) = if value < 9.995 {
            (100.0, 1)
        } else if value < 99.95 {
            (10.0, 2)
        } else {
            (1.0, 3)
        };
        let digits = format!("{:03}", rounded(value * scale));
        (digits.len() == 3).then(|| format!("{}{letter}{}", &digits[..whole], &digits[whole..]))
    })
}

/// To the nearest whole number, halves up; the dust of binary fractions aside.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few thousand, and not negative")]
fn rounded(value: f64) -> u64 {
    (value + 0.5 + 1e-9).floor() as u64
}
