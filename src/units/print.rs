//! Writing a quantity as we print it.

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

#[cfg(test)]
mod tests {
    use super::write;

    #[test]
    fn zero_is_never_negative() {
        assert_eq!(write(-0.01, 1, "dB"), "0.0 dB");
        assert_eq!(write(-0.06, 1, "dB"), "-0.1 dB");
    }
}
