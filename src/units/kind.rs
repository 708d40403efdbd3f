//! What there is to know of a kind of quantity: the units it is written in, and how those become numbers.

/// How a written number becomes a number in the base unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Conversion {
    /// `base = factor × written`.
    Times(f64),
    /// `base = (written + offset) × factor`.
    Shifted {
        /// Added first, in the written unit.
        offset: f64,
        /// Applied second.
        factor: f64,
    },
    /// `base = 10 lg(written × milliwatts)`: a power written in watts, held in dBm.
    Milliwatts(f64),
    /// American wire gauge, `base` in square millimetres.
    WireGauge,
}

/// One unit a person may write, with all its spellings; the first is the one we print.
#[derive(Debug, Clone, Copy)]
pub struct Spelling {
    /// Accepted words, exact in case.
    pub words: &'static [&'static str],
    /// How the number beside the word is read.
    pub conversion: Conversion,
}

/// What the program must know of a kind of quantity without knowing its Rust type.
///
/// Reached by name from a schema, so that shape checking and typing read a text the same way.
#[derive(Debug)]
pub struct Kind {
    /// What it measures, in lower case: `length`.
    pub name: &'static str,
    /// Symbol of the base unit: `m`.
    pub unit: &'static str,
    /// A value as it should be written: `24.5 m`.
    pub example: &'static str,
    /// Least and greatest value physics or the trade allows, in the base unit.
    pub range: (f64, f64),
    /// The least there can be of it besides nothing at all, whatever the sign, in the base unit.
    pub grain: f64,
    /// The units that may be written.
    pub spellings: &'static [Spelling],
}

impl Kind {
    /// What may be written, in words, at a key that sets a least and a most: `from 0.001 mm² to 1000 mm²`.
    #[must_use]
    pub fn limits(&self, [least, most]: [Option<f64>; 2]) -> String {
        let low = least.unwrap_or(self.range.0).max(self.range.0);
        let finer = low < self.grain && self.grain > 0.0;
        let finer = if finer { format!(", in steps of {} or more", self.plain(self.grain)) } else { String::new() };
        let high = most.unwrap_or(self.range.1).min(self.range.1);
        format!("from {} to {}{finer}", self.plain(low), self.plain(high))
    }

    /// A limit with as many digits as it has.
    fn plain(&self, value: f64) -> String {
        let gap = if self.unit == "°" { "" } else { " " };
        format!("{value}{gap}{}", self.unit)
    }

    /// All accepted spellings, in order of preference: `mm, m, in, ft`.
    pub fn words(&self) -> impl Iterator<Item = &'static str> {
        self.spellings.iter().flat_map(|spelling| spelling.words.iter().copied())
    }
}
