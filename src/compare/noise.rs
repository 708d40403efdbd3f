//! Which changes are too small to show.
//!
//! A change is too small if it is no more than an absolute threshold, in the unit of the line, or no more than a share of
//! the greater of both values. A person sets them by unit or by the last word of a line's key.

use std::str::FromStr;

/// The least change that is shown of the lines of one unit or one name.
#[derive(Debug, Clone, PartialEq)]
pub struct Threshold {
    /// A unit (`dB`) or the last word of a key (`availability`).
    pub of: String,
    /// In the base unit of the line.
    pub absolute: f64,
    /// As a share of the greater value, 0.01 for 1 %.
    pub relative: f64,
}

/// The thresholds of a comparison.
#[derive(Debug, Clone, Default)]
pub struct Noise {
    given: Vec<Threshold>,
}

/// Unit, absolute, relative. Levels have no share: a decibel is one already.
const DEFAULTS: [(&str, f64, f64); 18] = [
    ("dB", 0.1, 0.0),
    ("dBm", 0.1, 0.0),
    ("dBi", 0.1, 0.0),
    ("dB/km", 0.01, 0.0),
    ("m", 0.1, 0.001),
    ("mm", 0.1, 0.001),
    ("°", 0.1, 0.0),
    ("%", 0.001, 0.0),
    ("min", 0.1, 0.001),
    ("V", 0.05, 0.001),
    ("A", 0.01, 0.001),
    ("W", 0.1, 0.001),
    ("°C", 0.5, 0.0),
    ("hPa", 0.5, 0.0),
    ("mm/h", 0.1, 0.001),
    ("W/m²", 0.01, 0.01),
    ("Ω", 0.01, 0.001),
    ("1", 0.01, 0.001),
];

/// For every other unit: a thousandth.
const OTHERS: (f64, f64) = (0.0, 0.001);

/// Whether two numbers differ at all. Both are finite.
pub(super) fn differ(one: f64, other: f64) -> bool {
    (one - other).abs() > 0.0
}

impl Noise {
    /// Thresholds a person gave; the defaults hold for what they do not name.
    #[must_use]
    pub fn new(given: Vec<Threshold>) -> Self {
        Self { given }
    }

    /// Whether a change of a line is worth showing. It is the same there and back.
    #[must_use]
    pub fn passes(&self, key: &str, unit: &str, before: f64, after: f64) -> bool {
        let (absolute, relative) = self.of(key, unit);
        let change = (after - before).abs();
        // Sums of decimals are off by a few bits; a change of just the threshold is one.
        let least = absolute.max(relative * before.abs().max(after.abs())) * (1.0 - 1e-9);
        change > 0.0 && change >= least
    }

    /// A change in thresholds: how many of them it makes up.
    #[must_use]
    pub fn size(&self, key: &str, unit: &str, before: f64, after: f64) -> f64 {
        let (absolute, relative) = self.of(key, unit);
        let least = absolute.max(relative * before.abs().max(after.abs()));
        (after - before).abs() / least.max(f64::MIN_POSITIVE)
    }

    /// The absolute threshold and the share for a line.
    #[must_use]
    pub fn of(&self, key: &str, unit: &str) -> (f64, f64) {
        let word = key.rsplit('.').next().unwrap_or_default();
        let named = |name: &str| self.given.iter().rev().find(|given| given.of == name);
        if let Some(given) = named(word).or_else(|| named(unit)) {
            return (given.absolute, given.relative);
        }
        DEFAULTS.iter().find(|(of, ..)| *of == unit).map_or(OTHERS, |(_, absolute, relative)| (*absolute, *relative))
    }
}

impl FromStr for Threshold {
    type Err = String;

    /// `dB=0.5`, `availability=0.01` or, with a share as well, `m=1,0.5%`.
    fn from_str(text: &str) -> Result<Self, String> {
        let wrong = || {
            format!(
                "`{text}` is not a threshold: write UNIT=NUMBER or UNIT=NUMBER,SHARE%, such as `dB=0.5` or `m=1,0.5%`"
            )
        };
        let (of, rest) = text.split_once('=').ok_or_else(wrong)?;
        let (absolute, share) = rest.split_once(',').map_or((rest, None), |(number, share)| (number, Some(share)));
        let number = |text: &str| text.trim().parse().ok().filter(|number: &f64| number.is_finite() && *number >= 0.0);
        let relative = match share {
            None => Some(0.0),
            Some(share) => share.trim().strip_suffix('%').and_then(number).map(|percent| percent / 100.0),
        };
        match (of.trim(), number(absolute), relative) {
            ("", ..) => Err(wrong()),
            (of, Some(absolute), Some(relative)) => Ok(Self { of: of.into(), absolute, relative }),
            _ => Err(wrong()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Noise, Threshold};

    #[test]
    fn a_change_of_just_the_threshold_is_shown_and_less_is_not() {
        let noise = Noise::default();
        assert!(noise.passes("a_to_b.level", "dBm", -35.0, -35.1));
        assert!(!noise.passes("a_to_b.level", "dBm", -35.0, -35.099));
        // 3000 m: a thousandth is 3 m, more than 0.1 m.
        assert!(
            !noise.passes("path.distance", "m", 3000.0, 3002.0) && noise.passes("path.distance", "m", 3000.0, 3003.1)
        );
        assert!(!noise.passes("path.distance", "m", 5.0, 5.0));
    }

    #[test]
    fn a_name_counts_before_its_unit_and_a_unit_before_the_default() {
        let given = ["dB=3", "fade_margin=0.2,1%"].map(|text| text.parse::<Threshold>().expect(text));
        let noise = Noise::new(given.to_vec());
        assert!(!noise.passes("a_to_b.rain_fade", "dB", 20.0, 22.0));
        assert!(noise.passes("a_to_b.margins.fade_margin", "dB", 20.0, 20.3));
        assert!(!noise.passes("a_to_b.margins.fade_margin", "dB", 40.0, 40.3), "a hundredth of 40.3");
        for wrong in ["dB", "=1", "dB=x", "dB=-1", "dB=1,2", "dB=inf"] {
            assert!(wrong.parse::<Threshold>().is_err(), "{wrong}");
        }
    }
}
