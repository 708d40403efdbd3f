//! How far to stay from a power line, by its voltage.
//!
//! No single distance is right: the rules protect different people. Those for workers trained on live parts are left out,
//! for a crew that raises an antenna is not.

use crate::units::{LineVolts, Metres};

/// A rule that sets distances.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rule {
    /// 29 CFR 1926.1408, table A.
    Cfr1926,
    /// DGUV Information 203-060, table 5.
    Dguv203,
    /// South Australia, regulation 64.
    Sa64,
}

/// Ten feet, as the table prints them.
const FEET_10: f64 = 3.048;

impl Rule {
    /// Its name as published.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Cfr1926 => "29 CFR 1926.1408 table A",
            Self::Dguv203 => "DGUV Information 203-060 table 5",
            Self::Sa64 => "South Australia regulation 64",
        }
    }

    /// Kilovolts up to which a distance holds, and the distance in metres.
    const fn rows(self) -> &'static [(f64, f64)] {
        match self {
            Self::Cfr1926 => &[
                (50.0, FEET_10),
                (200.0, 1.5 * FEET_10),
                (350.0, 2.0 * FEET_10),
                (500.0, 2.5 * FEET_10),
                (750.0, 3.5 * FEET_10),
                (1000.0, 4.5 * FEET_10),
            ],
            Self::Dguv203 => &[(1.0, 1.0), (110.0, 3.0), (220.0, 4.0), (380.0, 5.0)],
            Self::Sa64 => &[(33.0, 3.0), (66.0, 4.0), (132.0, 5.0), (275.0, 6.0)],
        }
    }

    /// What holds for a line of unknown voltage, or of more than the rule speaks of. Ten feet are only for one that is known to
    /// be of 50 kV or less.
    ///
    /// Source: 29 CFR 1926.1409, fifty feet where more than 350 kV cannot be ruled out (second-hand); DGUV Information 203-060,
    /// 5 m; in South Australia the greatest row.
    const fn unknown(self) -> f64 {
        match self {
            Self::Cfr1926 => 5.0 * FEET_10,
            Self::Dguv203 => 5.0,
            Self::Sa64 => 6.0,
        }
    }

    /// The distance to keep from a line, of a voltage if that is known.
    ///
    /// Source: as [`Rule::name`]; 29 CFR 1926.1408 and DGUV as published, regulation 64 as published by its state.
    #[must_use]
    pub fn distance(self, voltage: Option<LineVolts>) -> Metres {
        let row = voltage.and_then(|volts| self.rows().iter().find(|(most, _)| volts.0 <= *most));
        Metres(row.map_or_else(|| self.unknown(), |(_, metres)| *metres))
    }
}
