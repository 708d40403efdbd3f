//! What a text that is no quantity was probably meant to be: each guess is read back before it is named.
//!
//! A guess is certain where it is the same value in other signs, so that a program may write it; else it is only a question.

use super::kind::{Conversion, Kind};
use super::number::read_number;
use super::text::read;

/// What was probably meant.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Meant {
    /// The text as it should read.
    pub text: String,
    /// Why, one clause; empty where the text says it.
    pub why: &'static str,
    /// Whether it is the same value in other signs.
    pub certain: bool,
}

/// Units of the trade that the language does not take: kind, word, what one of it is, and in which unit.
///
/// Exact by definition of the prefixes; 2.15 dB are the gain of a half-wave dipole over an isotropic antenna, common practice.
const FOREIGN: &[(&str, &str, Into, &str)] = &[
    ("frequency", "kHz", Into::Times(1e-6), "GHz"),
    ("frequency", "Hz", Into::Times(1e-9), "GHz"),
    ("bandwidth", "kHz", Into::Times(1e-3), "MHz"),
    ("bandwidth", "Hz", Into::Times(1e-6), "MHz"),
    ("antenna gain", "dBd", Into::Plus(2.15), "dBi"),
    ("data rate", "kbit/s", Into::Times(1e-3), "Mbit/s"),
    ("data rate", "kbps", Into::Times(1e-3), "Mbit/s"),
    ("resistance per length", "mohm/m", Into::Times(1.0), "ohm/km"),
    ("power level", "dBW", Into::Plus(30.0), "dBm"),
    ("speed", "mph", Into::Times(0.447_04), "m/s"),
];

/// How a number in a foreign unit becomes one in ours.
#[derive(Clone, Copy)]
enum Into {
    Times(f64),
    Plus(f64),
}

impl Kind {
    /// What a text that cannot be read, or not at this key, was probably meant to be. `bounds` are the least and the most of
    /// the key, where they are narrower than the kind's.
    #[must_use]
    pub fn meant(&self, text: &str, bounds: [Option<f64>; 2]) -> Option<Meant> {
        let text = text.trim();
        let fits = |text: &str| {
            let value = read(self, text).ok()?;
            let [least, most] = bounds;
            (least.is_none_or(|least| value >= least) && most.is_none_or(|most| value <= most)).then_some(value)
        };
        let certain = |meant: Option<String>, why| {
            meant.filter(|text| fits(text).is_some()).map(|text| Meant { text, why, certain: true })
        };
        let perhaps = |meant: Option<String>, why| {
            meant.filter(|text| fits(text).is_some()).map(|text| Meant { text, why, certain: false })
        };
        certain(with_minus(text), "that is a dash, not a minus")
            .or_else(|| certain(with_point(text), "use a decimal point, not a comma"))
            .or_else(|| certain(converted(self, text), "the same value in an accepted unit"))
            .or_else(|| perhaps(squared(self, text), "a conductor is given by its cross-section, not its diameter"))
            .or_else(|| perhaps(renamed(self, text, "ohm/m", "ohm/km"), "resistance is given per kilometre"))
            .or_else(|| perhaps(bits(self, text), "rates are in bits; if bytes were meant, write eight times as much"))
            .or_else(|| perhaps(self.positive_letter(text), "it lacks its letter, N or S, E or W"))
            .or_else(|| perhaps(self.of_a_fraction(text), "write it in per cent"))
            .or_else(|| perhaps(self.other_unit(text, &fits), ""))
            .or_else(|| perhaps(self.turned(text, bounds[1]), "the minus is missing"))
    }

    /// A position in degrees, minutes and seconds that lacks its letter.
    fn positive_letter(&self, text: &str) -> Option<String> {
        let letter = match self.name {
            "latitude" => 'N',
            "longitude" => 'E',
            _ => return None,
        };
        Some(format!("{text} {letter}"))
    }

    /// `0.9999 %` or `0.9999` for `99.99 %`.
    fn of_a_fraction(&self, text: &str) -> Option<String> {
        let number = text.trim_end_matches('%').trim_end();
        let value: f64 = number.parse().ok().filter(|value| *value > 0.0 && *value < 1.0)?;
        (self.unit == "%").then(|| format!("{} %", tidy(value * 100.0)))
    }

    /// The number with the first unit of the kind that makes it possible here: they are listed as they are used most. A level in
    /// milliwatts or in watts is another matter, and nobody can tell which.
    fn other_unit(&self, text: &str, fits: &impl Fn(&str) -> Option<f64>) -> Option<String> {
        let end = read_number(text).filter(|_| !text.contains(','))?.end;
        let number = text[..end].trim();
        let (bare, word) = (number.len() == text.len(), text[end..].trim());
        // A height of 2240 m is not one of 2240 cm; whoever counts in feet writes feet.
        // Of a time nobody can tell whether seconds or minutes were meant.
        if bare && matches!(self.name, "delay" | "duration") {
            return None;
        }
        if !bare && (self.name == "length" || !self.words().any(|known| known == word)) {
            return None;
        }
        // A gauge is a number of another sort.
        let units = self.spellings.iter().filter(|spelling| spelling.conversion != Conversion::WireGauge);
        let words = units.filter_map(|spelling| spelling.words.first());
        let mut possible = words.map(|word| format!("{number} {word}")).filter(|text| fits(text).is_some());
        possible.next().filter(|_| bare || self.name != "power level")
    }

    /// The same below zero, for a level.
    fn turned(&self, text: &str, most: Option<f64>) -> Option<String> {
        let received = self.name == "power level" && most.is_some_and(|most| most <= HIGHEST_RECEIVED);
        let sign_missing = received && text.starts_with(|c: char| c.is_ascii_digit());
        sign_missing.then(|| format!("-{text}"))
    }
}

/// A key that may be no higher is about a level received, and those are below zero.
const HIGHEST_RECEIVED: f64 = 10.0;

/// Dashes that stand where a minus should.
const DASHES: [char; 4] = ['\u{2010}', '\u{2011}', '\u{2013}', '\u{2014}'];

fn with_minus(text: &str) -> Option<String> {
    text.strip_prefix(DASHES).map(|rest| format!("-{}", rest.trim_start()))
}

/// `24,5 m` with its point. Three digits after the comma may be thousands: nobody can tell.
fn with_point(text: &str) -> Option<String> {
    let (ahead, behind) = text.split_once(',')?;
    let digits = behind.bytes().take_while(u8::is_ascii_digit).count();
    let plain = ahead.trim_start_matches(['-', '+']).bytes().all(|byte| byte.is_ascii_digit());
    (plain && digits > 0 && digits != 3 && !behind.contains(',')).then(|| format!("{ahead}.{behind}"))
}

fn converted(kind: &Kind, text: &str) -> Option<String> {
    let number = read_number(text)?;
    let word = text[number.end..].trim();
    let (.., into, unit) = FOREIGN.iter().find(|(name, foreign, ..)| *name == kind.name && *foreign == word)?;
    let value = match into {
        Into::Times(factor) => number.value * factor,
        Into::Plus(more) => number.value + more,
    };
    Some(format!("{} {unit}", tidy(value)))
}

/// The number with another unit, where it has a certain one.
fn renamed(kind: &Kind, text: &str, from: &str, to: &str) -> Option<String> {
    let number = text.strip_suffix(from)?.trim_end();
    kind.words().any(|word| word == to).then(|| format!("{number} {to}"))
}

/// `1 GB/s` for `1 Gbit/s`: most write a byte for a bit.
fn bits(kind: &Kind, text: &str) -> Option<String> {
    let both = [("GByte/s", "Gbit/s"), ("GB/s", "Gbit/s"), ("MByte/s", "Mbit/s"), ("MB/s", "Mbit/s")];
    both.into_iter().find_map(|(bytes, bits)| renamed(kind, text, bytes, bits))
}

/// `16 mm` for `16 mm2`.
fn squared(kind: &Kind, text: &str) -> Option<String> {
    let squared = format!("{text}2");
    (kind.name == "conductor size" && text.ends_with("mm")).then_some(squared)
}

/// A value without the dust of the sum.
fn tidy(value: f64) -> f64 {
    format!("{value:.9e}").parse().unwrap_or(value)
}

#[cfg(test)]
mod tests {
    use super::super::{
        Dbi, Dbm, Gigahertz, Latitude, MegabitsPerSecond, Megahertz, Metres, Percent, Quantity, SquareMillimetres,
        Volts,
    };

    fn meant<Q: Quantity>(text: &str, bounds: [Option<f64>; 2]) -> Option<String> {
        Q::KIND.meant(text, bounds).map(|meant| meant.text)
    }

    #[test]
    fn each_slip_is_named_as_it_was_meant() {
        let open = [None, None];
        let some = |text: &str| Some(text.to_owned());
        assert_eq!(meant::<Gigahertz>("71.875 MHz", [Some(1.0), None]), some("71.875 GHz"));
        assert_eq!(meant::<Gigahertz>("71875000 kHz", open), some("71.875 GHz"));
        assert_eq!(meant::<Megahertz>("500 GHz", open), some("500 MHz"));
        assert_eq!(meant::<Dbm>("\u{2013}70 dBm", open), some("-70 dBm"));
        assert_eq!(meant::<Dbm>("70 dBm", [None, Some(0.0)]), some("-70 dBm"));
        assert_eq!(meant::<Dbi>("48.35 dBd", open), some("50.5 dBi"));
        assert_eq!(meant::<MegabitsPerSecond>("1 GB/s", open), some("1 Gbit/s"));
        assert_eq!(meant::<SquareMillimetres>("16 mm", open), some("16 mm2"));
        assert_eq!(meant::<Percent>("0.9999 %", [Some(50.0), None]), some("99.99 %"));
        assert_eq!(meant::<Percent>("0.9999", [Some(50.0), None]), some("99.99 %"));
        assert_eq!(meant::<Volts>("463", [Some(-20.0), Some(20.0)]), some("463 mV"));
        assert_eq!(meant::<Volts>("552 V", [Some(-20.0), Some(20.0)]), some("552 mV"));
        assert_eq!(meant::<Latitude>("47 05 02.5", open), some("47 05 02.5 N"));
        assert_eq!(meant::<Metres>("24,5 m", open), some("24.5 m"));
    }

    #[test]
    fn where_nobody_can_tell_nothing_is_guessed() {
        assert_eq!(meant::<Metres>("1,234 m", [None, None]), None, "thousands or decimals");
        assert_eq!(meant::<Dbm>("125 dBm", [None, Some(60.0)]), None, "milliwatts or watts");
        assert_eq!(meant::<Metres>("tall", [None, None]), None);
    }
}
