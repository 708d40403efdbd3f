//! What a voltmeter shows at a radio's alignment port.
//!
//! Two points of a straight scale go in; levels become volts and volts levels. On many radios *less* voltage is a
//! stronger signal, so nothing here assumes a direction.

use crate::units::{Dbm, Decibels, Volts};

/// A straight line from level to voltage.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scale {
    a: (Volts, Dbm),
    /// `(V_b - V_a) / (L_b - L_a)`, volts a decibel; neither zero nor infinite.
    slope: f64,
}

/// Two points with the same voltage or the same level make no scale.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DegenerateScale;

impl Scale {
    /// The scale through two points, in either order.
    ///
    /// # Errors
    /// The points share their voltage or their level.
    pub fn through(a: (Volts, Dbm), b: (Volts, Dbm)) -> Result<Self, DegenerateScale> {
        let slope = (b.0 - a.0).0 / (b.1 - a.1).0;
        if slope.is_normal() { Ok(Self { a, slope }) } else { Err(DegenerateScale) }
    }

    /// Voltage `V` at a level `L`.
    ///
    /// ```text
    /// V = V_a + (L - L_a) (V_b - V_a) / (L_b - L_a)
    /// ```
    ///
    /// Runs on beyond the two points; where the port stops is for its data sheet to say.
    ///
    /// Source: common practice of receiver ports; no standard.
    #[must_use]
    pub fn volts(&self, level: Dbm) -> Volts {
        let (v_a, l_a) = self.a;
        v_a + Volts((level - l_a).0 * self.slope)
    }

    /// Level at a voltage, the inverse of [`Scale::volts`].
    #[must_use]
    pub fn level(&self, volts: Volts) -> Dbm {
        let (v_a, l_a) = self.a;
        l_a + Decibels((volts - v_a).0 / self.slope)
    }

    /// Whether the voltage rises as the signal grows.
    #[must_use]
    pub fn rises(&self) -> bool {
        self.slope > 0.0
    }
}
