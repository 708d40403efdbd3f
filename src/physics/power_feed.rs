//! What voltage is left at the far end of the cable.
//!
//! A source, a cable and a radio go in. A radio draws constant power, whatever its voltage: the less arrives, the more
//! current it takes. So a cable does not just lose some voltage; beyond a certain resistance nothing runs at all.

use crate::units::{Amperes, Metres, Ohms, OhmsPerKilometre, Volts, Watts};

/// How many pairs of a cable carry the power.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pairs {
    /// One conductor out and one back.
    One,
    /// Two conductors side by side each way, as power over Ethernet was first made.
    Two,
    /// Four conductors each way.
    Four,
}

impl Pairs {
    /// Resistance of the loop over that of one conductor end to end.
    ///
    /// ```text
    /// n conductors out and n back:  R_c / n + R_c / n = 2 R_c / n
    /// ```
    ///
    /// The loop resistance on a cable's data sheet is that of one pair, `2 R_c`.
    ///
    /// Source: Kirchhoff's laws.
    #[must_use]
    pub fn loop_factor(self) -> f64 {
        match self {
            Self::One => 2.0,
            Self::Two => 1.0,
            Self::Four => 0.5,
        }
    }
}

/// A cable as a feeder of power.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Feeder {
    /// Pairs that carry the power.
    pub pairs: Pairs,
    /// One conductor, at the temperature of the cable.
    pub conductor: OhmsPerKilometre,
    /// What else is in series with each conductor: surge protector, plugs, couplers.
    pub inline: Ohms,
}

impl Feeder {
    /// Resistance of the whole loop, `R`, for a length of cable one way.
    ///
    /// ```text
    /// R = (r L + R_inline) · loop factor
    /// ```
    ///
    /// Source: Kirchhoff's laws.
    #[must_use]
    pub fn loop_resistance(&self, length: Metres) -> Ohms {
        let one_way = self.conductor * length + self.inline;
        Ohms(one_way.0 * self.pairs.loop_factor())
    }
}

/// Where source, cable and load settle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OperatingPoint {
    /// Voltage at the load.
    pub load: Volts,
    /// Current around the loop.
    pub current: Amperes,
    /// Power that warms the cable.
    pub cable_loss: Watts,
    /// Power the source gives.
    pub source_power: Watts,
}

/// The load wants more than the cable can bring, so it cannot run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NoOperatingPoint {
    /// The most that can reach the far end, `V_s² / 4R`, at half the source voltage.
    pub most_power: Watts,
}

/// Voltage `V` at a load of constant power `P` behind a loop of `R`, fed with `V_s`.
///
/// ```text
/// V² - V_s V + R P = 0
/// V = ( V_s + √(V_s² - 4 R P) ) / 2,   I = P / V,   loss = (V_s - V) I
/// ```
///
/// The other root, `V_s - V`, is no running point: below `V_s / 2` a sag lowers the power that arrives, and the supply
/// collapses. Holds for `V_s > 0`, `P ≥ 0` and `R ≥ 0`; polarity does not enter.
///
/// Source: Ohm's law. With the source voltages, class powers and channel resistances of IEEE 802.3-2022, clauses 33 and
/// 145, it gives the voltages the standard promises the powered device, to 0.1 V.
///
/// # Errors
/// There is no root: `P` is more than `V_s² / 4R`.
pub fn operating_point(source: Volts, power: Watts, loop_resistance: Ohms) -> Result<OperatingPoint, NoOperatingPoint> {
    let (v_s, p, r) = (source.0, power.0, loop_resistance.0);
    let discriminant = v_s * v_s - 4.0 * r * p;
    if v_s <= 0.0 || discriminant < 0.0 {
        let most = if v_s > 0.0 { v_s * v_s / (4.0 * r) } else { 0.0 };
        return Err(NoOperatingPoint { most_power: Watts(most) });
    }
    let load = Volts(f64::midpoint(v_s, discriminant.sqrt()));
    let current = Amperes(p / load.0);
    Ok(OperatingPoint { load, current, cable_loss: (source - load) * current, source_power: source * current })
}

/// Longest cable, one way, that leaves a constant load at least `minimum`, `V_min`.
///
/// ```text
/// L = ( (V_s - V_min) V_min / (P · loop factor) - R_inline ) / r
/// ```
///
/// A load content with less than `V_s / 2` still cannot run below it, so no smaller `V_min` is used. None if not
/// even a cable of no length would do; infinite if the load draws nothing.
///
/// Source: [`operating_point`], solved for the length.
#[must_use]
pub fn longest_run(source: Volts, power: Watts, minimum: Volts, feeder: &Feeder) -> Option<Metres> {
    let v_min = minimum.0.max(source.0 / 2.0);
    let most_loop = (source.0 - v_min) * v_min / power.0;
    let cable = most_loop / feeder.pairs.loop_factor() - feeder.inline.0;
    (cable >= 0.0).then(|| Metres(1000.0 * cable / feeder.conductor.0))
}
