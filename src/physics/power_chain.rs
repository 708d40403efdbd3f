//! A radio that hands power on to other devices: all of them solved together.
//!
//! The current of what is fed onward flows through the first cable too, lowers the voltage there, and so makes every
//! constant-power load draw more. Solving one cable after the other would miss that; here the whole chain settles at once.

use super::power_feed::{NoOperatingPoint, OperatingPoint, operating_point};
use crate::units::{Amperes, Ohms, Volts, Watts};

/// A device of constant power fed straight through the one before it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Onward {
    /// Loop resistance between the two.
    pub loop_resistance: Ohms,
    /// What it draws.
    pub draw: Watts,
}

/// Where a chain settles.
#[derive(Debug, Clone, PartialEq)]
pub struct Chain {
    /// At the first device: its voltage, the current of the whole chain, what the first cable loses, what the source gives.
    pub first: OperatingPoint,
    /// At each device fed onward.
    pub onward: Vec<OperatingPoint>,
}

/// Most steps of the iteration. From the right of a convex function Newton's method halves the distance at the very worst.
const MOST_STEPS: u32 = 200;

/// Voltage `V_1` of a device of power `P_1` behind a loop `R_1`, with devices of power `P_k` behind loops `R_k` fed on from
/// its input.
///
/// ```text
/// f(V_1) = V_1 - V_s + R_1 ( P_1 / V_1 + Σ P_k / V_k ) = 0,   V_k = ( V_1 + √(V_1² - 4 R_k P_k) ) / 2
/// ```
///
/// Every current falls as `V_1` rises, ever more slowly, so `f` is convex: Newton's method from `V_s` comes down to the
/// highest root and never passes it. It is the running point; where the slope turns before `f` does there is no root.
/// Without devices fed onward this is [`operating_point`].
///
/// Source: Ohm's and Kirchhoff's laws.
///
/// # Errors
/// There is no root, or an onward loop cannot bring its device's power.
pub fn settle(source: Volts, loop_resistance: Ohms, own: Watts, onward: &[Onward]) -> Result<Chain, NoOperatingPoint> {
    if onward.is_empty() {
        return operating_point(source, own, loop_resistance).map(|first| Chain { first, onward: Vec::new() });
    }
    let (v_s, r) = (source.0, loop_resistance.0);
    let none = || NoOperatingPoint { most_power: Watts(v_s.max(0.0) * v_s / (4.0 * r)) };
    let mut v = v_s;
    for _ in 0..MOST_STEPS {
        let (current, slope) = drawn(v, own, onward).ok_or_else(none)?;
        let f = v - v_s + r * current;
        let step = f / (1.0 + r * slope);
        let next = v - step;
        // Rounding may push the last step back by a hair.
        if step.abs() <= 1e-12 * v_s {
            return chain(source, Volts(next), own, onward).map_err(|_| none());
        }
        if !next.is_finite() || step < 0.0 || next <= 0.0 {
            return Err(none());
        }
        v = next;
    }
    Err(none())
}

/// Current of the whole chain at a voltage of the first device, and how it changes with it.
fn drawn(v: f64, own: Watts, onward: &[Onward]) -> Option<(f64, f64)> {
    let mut sum = (own.0 / v, -own.0 / (v * v));
    for device in onward {
        let root = (v * v - 4.0 * device.loop_resistance.0 * device.draw.0).max(-1.0);
        if v <= 0.0 || root < 0.0 {
            return None;
        }
        let at_device = f64::midpoint(v, root.sqrt());
        let current = device.draw.0 / at_device;
        // dV_k/dV_1 = (1 + V_1 / √…) / 2, without end where the device can only just run.
        let rise = f64::midpoint(1.0, v / root.sqrt());
        sum = (sum.0 + current, sum.1 - current / at_device * rise);
    }
    Some(sum)
}

fn chain(source: Volts, first: Volts, own: Watts, onward: &[Onward]) -> Result<Chain, NoOperatingPoint> {
    let onward: Vec<OperatingPoint> = onward
        .iter()
        .map(|device| operating_point(first, device.draw, device.loop_resistance))
        .collect::<Result<_, _>>()?;
    let passed = onward.iter().fold(0.0, |sum, device| sum + device.current.0);
    let current = Amperes(own.0 / first.0 + passed);
    let first =
        OperatingPoint { load: first, current, cable_loss: (source - first) * current, source_power: source * current };
    Ok(Chain { first, onward })
}

/// A chain and the voltage wanted at each of its devices.
#[derive(Debug, Clone, PartialEq)]
pub struct Wants {
    /// What the first device draws.
    pub own: Watts,
    /// The voltage wanted there.
    pub least: Volts,
    /// The devices fed onward, each with the voltage wanted there.
    pub onward: Vec<(Onward, Volts)>,
}

impl Wants {
    /// Whether every device gets its voltage.
    #[must_use]
    pub fn met(&self, source: Volts, loop_resistance: Ohms) -> bool {
        let devices: Vec<Onward> = self.onward.iter().map(|(device, _)| *device).collect();
        settle(source, loop_resistance, self.own, &devices).is_ok_and(|chain| {
            let enough = chain.onward.iter().zip(&self.onward).all(|(point, (_, least))| point.load >= *least);
            chain.first.load >= self.least && enough
        })
    }

    /// The greatest loop resistance of the first cable at which every device still gets its voltage.
    ///
    /// A longer loop lowers every voltage of the chain, so the limit is bisected, between nothing and the loop at which the
    /// first device alone would take half of the source. None if not even a loop without resistance would do, infinite if
    /// nothing is drawn.
    ///
    /// Source: [`settle`].
    #[must_use]
    pub fn most_loop(&self, source: Volts) -> Option<Ohms> {
        if !self.met(source, Ohms(0.0)) {
            return None;
        }
        let all = self.onward.iter().fold(self.own.0, |sum, (device, _)| sum + device.draw.0);
        let (mut good, mut bad) = (0.0, source.0 * source.0 / (4.0 * all) * 1.001);
        if !bad.is_finite() {
            return Some(Ohms(f64::INFINITY));
        }
        for _ in 0..80 {
            let middle = f64::midpoint(good, bad);
            if self.met(source, Ohms(middle)) { good = middle } else { bad = middle }
        }
        Some(Ohms(good))
    }

    /// The least source voltage at which every device gets its voltage behind a loop.
    ///
    /// More at the source is more everywhere, so the limit is bisected. None if even 1000 V would not do.
    ///
    /// Source: [`settle`].
    #[must_use]
    pub fn least_source(&self, loop_resistance: Ohms) -> Option<Volts> {
        let (mut bad, mut good) = (0.0, 1000.0);
        if !self.met(Volts(good), loop_resistance) {
            return None;
        }
        for _ in 0..80 {
            let middle = f64::midpoint(bad, good);
            if self.met(Volts(middle), loop_resistance) { good = middle } else { bad = middle }
        }
        Some(Volts(good))
    }
}
