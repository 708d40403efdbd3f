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
    let row = |at: usize| if screened { FIXED[at].1 } else { FIXED[at].0 };
    let steps = ((temperature.0 - 20.0) / 5.0).max(0.0);
    let last = FIXED.len() - 2;
    let below = (0..=last).rev().find(|at| *at as f64 <= steps).unwrap_or(0);
    let length = row(below) + (row(below + 1) - row(below)) * (steps - below as f64);
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
