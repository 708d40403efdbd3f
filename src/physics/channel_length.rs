//! How much a hot cable counts of the length that Ethernet may have.
//!
//! A cable loses more of its signal when it is hot, so less of it fits into the same channel.

use crate::units::{Celsius, Metres};

/// Length of fixed cable at 20 °C, beside 10 m of cords.
///
/// Source: ISO/IEC 11801-1, ANSI/TIA-568 (second-hand).
const AT_20: f64 = 90.0;

/// Fixed cable that fits into a channel with 10 m of cords, from 20 °C in steps of 5 K: unscreened, screened.
///
/// Source: ANSI/TIA-568, table of length against temperature (from memory, not seen; 84 m at 40 °C second-hand).
const FIXED: [(f64, f64); 9] = [
    (90.0, 90.0),
    (89.0, 89.5),
    (87.0, 88.5),
    (85.5, 87.7),
    (84.0, 87.0),
    (81.7, 86.5),
    (79.5, 85.5),
    (77.2, 84.7),
    (75.0, 83.0),
];

/// Longest fixed cable beside 10 m of cords, `H(t)`.
///
/// Straight lines between the rows of the table; 90 m at 20 °C and below. Past 60 °C, where the table ends, the slope of
/// its last row is kept: an estimate.
///
/// Source: ANSI/TIA-568 (from memory, not seen).
#[must_use]
pub fn fixed_cable(temperature: Celsius, screened: bool) -> Metres {
    let column = |row: &(f64, f64)| if screened { row.1 } else { row.0 };
    // Degrees above 20 °C in steps of the table; each step is walked in turn, the last one as far as it goes.
    let mut steps = ((temperature.0 - 20.0) / 5.0).max(0.0);
    let mut length = AT_20;
    for (number, pair) in FIXED.windows(2).enumerate() {
        let last = number + 2 == FIXED.len();
        let walked = if last { steps } else { steps.min(1.0) };
        length += (column(&pair[1]) - column(&pair[0])) * walked;
        steps -= walked;
    }
    Metres(length.max(1.0))
}

/// How long a hot cable is to Ethernet: the length of cable at 20 °C that loses as much.
///
/// ```text
/// L' = L · 90 m / H(t)
/// ```
///
/// Source: loss in proportion to length, with [`fixed_cable`].
#[must_use]
pub fn equivalent(length: Metres, temperature: Celsius, screened: bool) -> Metres {
    Metres(length.0 * AT_20 / fixed_cable(temperature, screened).0)
}
