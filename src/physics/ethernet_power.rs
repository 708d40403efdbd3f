//! What a class of power over Ethernet promises.
//!
//! A source promises its port voltage and power, a device promises to be content with what is left behind the worst cable
//! the standard allows. The figures are those of several public summaries that agree; the standard itself was not seen.

use crate::units::{Volts, Watts};

/// The greatest voltage at any port of the standard.
///
/// Source: IEEE 802.3-2022, tables 33-11 and 145-16 (second-hand).
pub const MOST_VOLTAGE: Volts = Volts(57.0);

/// The most power any port of the standard gives.
///
/// Source: IEEE 802.3-2022, table 145-16 (second-hand).
pub const MOST_POWER: Watts = Watts(99.9);

/// The highest voltage at which a device of the standard must have switched on.
///
/// Source: IEEE 802.3-2022, clauses 33 and 145 (from memory, not seen).
pub const TURN_ON: Volts = Volts(42.0);

/// A class of power.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Class {
    /// 0 to 8.
    pub number: u8,
    /// The type of port that first had it: 1 (802.3af), 2 (802.3at), 3 or 4 (802.3bt).
    pub kind: u8,
    /// What the source must be able to give.
    pub source_power: Watts,
    /// What the device may draw.
    pub device_power: Watts,
    /// Least voltage at the source.
    pub source_voltage: Volts,
    /// Pairs it takes.
    pub pairs: u8,
}

const fn class(number: u8, kind: u8, source: f64, device: f64, volts: f64, pairs: u8) -> Class {
    Class {
        number,
        kind,
        source_power: Watts(source),
        device_power: Watts(device),
        source_voltage: Volts(volts),
        pairs,
    }
}

/// Every class.
///
/// Source: IEEE 802.3-2022, clauses 33 and 145 (second-hand; classes 4 and up with two pairs only for class 4).
pub const CLASSES: [Class; 9] = [
    class(0, 1, 15.4, 12.95, 44.0, 2),
    class(1, 1, 4.0, 3.84, 44.0, 2),
    class(2, 1, 7.0, 6.49, 44.0, 2),
    class(3, 1, 15.4, 12.95, 44.0, 2),
    class(4, 2, 30.0, 25.5, 50.0, 2),
    class(5, 3, 45.0, 40.0, 50.0, 4),
    class(6, 3, 60.0, 51.0, 50.0, 4),
    class(7, 4, 75.0, 62.0, 52.0, 4),
    class(8, 4, 90.0, 71.3, 52.0, 4),
];

/// The class of a number; none above 8.
#[must_use]
pub fn by_number(number: u8) -> Option<Class> {
    CLASSES.get(usize::from(number)).copied()
}

/// The least class whose devices may draw a power; none beyond class 8.
#[must_use]
pub fn for_draw(draw: Watts) -> Option<Class> {
    CLASSES[1..].iter().find(|class| draw <= class.device_power).copied()
}
