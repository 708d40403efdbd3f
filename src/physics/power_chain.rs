//! A radio that hands power on to other devices: all of them solved together.
//!
//! The current of what is fed onward flows through the first cable too, lowers the voltage there, and so makes every
//! constant-power load draw more. Solving one cable after the other would miss that; here the whole chain settles at once.

use super::power_feed::{NoOperatingPoint, OperatingPoint, operating_point};
use crate::units::{Amperes, Ohms, Volts, Watts};

/// A device of constant power fed straight through the one before it, and what hangs on it in turn.
#[derive(Debug, Clone, PartialEq)]
pub struct Onward {
    /// Loop resistance between the two.
    pub loop_resistance: Ohms,
    /// What it draws.
    pub draw: Watts,
    /// The devices fed on from its input.
    pub onward: Vec<Onward>,
}

/// Where a device settles with all that hangs on it.
#[derive(Debug, Clone, PartialEq)]
pub struct Chain {
    /// At the device: its voltage, the current of all it feeds and itself, what the cable to it loses, what goes into that
    /// cable.
    pub first: OperatingPoint,
    /// Each device fed onward, in the order given.
    pub onward: Vec<Chain>,
}

/// Most steps of the iteration. From the right of a convex function Newton's method halves the distance at the very worst.
const MOST_STEPS: u32 = 200;

/// Voltages `V_k` of a tree of devices of power `P_k`, each behind a loop `R_k` from the input of the one before it.
///
/// ```text
/// V_k = V_before - R_k I_k,   I_k = P_k / V_k + Σ I_onward
/// ```
///
/// Newton's method for all voltages at once. With `P / V ≈ 2 P / V° - (P / V°²) V` around the last `V°`, a device and all
/// behind it take `I = A - B V`; seen through its loop that is `A / (1 - R B) - B / (1 - R B) V_before`. So one pass inwards
/// adds up `A` and `B`, and one outwards gives the next voltages. Every current falls as its voltage rises, ever more slowly, so
/// the steps come down from `V_s` to the highest solution, which is the running point, and never pass it. Where `R B` reaches 1
/// the slope turns before that, and there is none.
///
/// Without devices fed onward this is [`operating_point`].
///
/// Source: Ohm's and Kirchhoff's laws.
///
/// # Errors
/// There is no solution.
pub fn settle(source: Volts, loop_resistance: Ohms, own: Watts, onward: &[Onward]) -> Result<Chain, NoOperatingPoint> {
    if onward.is_empty() {
        return operating_point(source, own, loop_resistance).map(|first| Chain { first, onward: Vec::new() });
    }
    let (v_s, r) = (source.0, loop_resistance.0);
    let none = || NoOperatingPoint { most_power: Watts(v_s.max(0.0) * v_s / (4.0 * r)) };
    if v_s <= 0.0 {
        return Err(none());
    }
    let mut tree = Node::of(r, own, onward, v_s);
    for _ in 0..MOST_STEPS {
        tree.add_up().ok_or_else(none)?;
        let moved = tree.step(v_s).ok_or_else(none)?;
        if moved <= 1e-12 * v_s {
            return Ok(tree.chain(v_s));
        }
    }
    Err(none())
}

/// A device while the voltages are sought.
struct Node {
    loop_resistance: f64,
    draw: f64,
    volts: f64,
    /// What it and all behind it take of the input before its loop, as `A - B V_before`.
    seen: (f64, f64),
    onward: Vec<Node>,
}

impl Node {
    fn of(loop_resistance: f64, draw: Watts, onward: &[Onward], volts: f64) -> Self {
        let onward = onward.iter().map(|next| Self::of(next.loop_resistance.0, next.draw, &next.onward, volts));
        Self { loop_resistance, draw: draw.0, volts, seen: (0.0, 0.0), onward: onward.collect() }
    }

    /// What the device takes with all behind it, as `A - B V`, and the same through its loop; none past the turning point.
    fn add_up(&mut self) -> Option<(f64, f64)> {
        let mut at = (2.0 * self.draw / self.volts, self.draw / (self.volts * self.volts));
        for next in &mut self.onward {
            let taken = next.add_up()?;
            at = (at.0 + taken.0, at.1 + taken.1);
        }
        let left = 1.0 - self.loop_resistance * at.1;
        self.seen = at;
        (left > 0.0).then_some((at.0 / left, at.1 / left))
    }

    /// The next voltages, from that before the loop; how far the farthest moved. None where one is no voltage.
    fn step(&mut self, before: f64) -> Option<f64> {
        let (a, b) = self.seen;
        let volts = (before - self.loop_resistance * a) / (1.0 - self.loop_resistance * b);
        if !volts.is_finite() || volts <= 0.0 {
            return None;
        }
        let mut moved = (self.volts - volts).abs();
        self.volts = volts;
        for next in &mut self.onward {
            moved = moved.max(next.step(volts)?);
        }
        Some(moved)
    }

    /// All of it once it stands still.
    fn chain(&self, before: f64) -> Chain {
        let onward: Vec<Chain> = self.onward.iter().map(|next| next.chain(self.volts)).collect();
        let passed = onward.iter().fold(0.0, |sum, next| sum + next.first.current.0);
        let current = Amperes(self.draw / self.volts + passed);
        let (source, load) = (Volts(before), Volts(self.volts));
        let first =
            OperatingPoint { load, current, cable_loss: (source - load) * current, source_power: source * current };
        Chain { first, onward }
    }
}

/// A device, the voltage wanted there, and what hangs on it.
#[derive(Debug, Clone, PartialEq)]
pub struct Wants {
    /// What it draws.
    pub own: Watts,
    /// The voltage wanted there.
    pub least: Volts,
    /// The devices fed onward, each behind its loop.
    pub onward: Vec<(Ohms, Wants)>,
}

impl Wants {
    /// The devices fed onward, without what they want.
    fn devices(&self) -> Vec<Onward> {
        let device = |(loop_resistance, next): &(Ohms, Self)| Onward {
            loop_resistance: *loop_resistance,
            draw: next.own,
            onward: next.devices(),
        };
        self.onward.iter().map(device).collect()
    }

    /// Whether every device has its voltage where a chain settled.
    fn met_by(&self, chain: &Chain) -> bool {
        chain.first.load >= self.least
            && self.onward.iter().zip(&chain.onward).all(|((_, next), chain)| next.met_by(chain))
    }

    /// What all of them draw.
    fn drawn(&self) -> f64 {
        self.onward.iter().fold(self.own.0, |sum, (_, next)| sum + next.drawn())
    }

    /// Whether every device gets its voltage.
    #[must_use]
    pub fn met(&self, source: Volts, loop_resistance: Ohms) -> bool {
        settle(source, loop_resistance, self.own, &self.devices()).is_ok_and(|chain| self.met_by(&chain))
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
        let (mut good, mut bad) = (0.0, source.0 * source.0 / (4.0 * self.drawn()) * 1.001);
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
