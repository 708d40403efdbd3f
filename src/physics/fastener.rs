//! What a screw bears.

use crate::units::{Megapascals, NewtonMetres, Newtons, SquareMillimetres};
use std::f64::consts::PI;

/// Coarse metric threads brackets use, in millimetres, with the width of their hexagon heads.
///
/// Source: ISO 261, coarse series; ISO 4017 for the heads (from memory).
const THREADS: [Thread; 6] = [
    Thread { name: "M5", diameter: 5.0, pitch: 0.8, across_flats: 8 },
    Thread { name: "M6", diameter: 6.0, pitch: 1.0, across_flats: 10 },
    Thread { name: "M8", diameter: 8.0, pitch: 1.25, across_flats: 13 },
    Thread { name: "M10", diameter: 10.0, pitch: 1.5, across_flats: 16 },
    Thread { name: "M12", diameter: 12.0, pitch: 1.75, across_flats: 18 },
    Thread { name: "M16", diameter: 16.0, pitch: 2.0, across_flats: 24 },
];

struct Thread {
    name: &'static str,
    diameter: f64,
    pitch: f64,
    across_flats: u8,
}

/// Stress at a permanent set of 0.2 % of stainless screws of class 70, A2 or A4.
///
/// Source: ISO 3506-1 (from memory, not seen).
pub const CLASS_70: Megapascals = Megapascals(450.0);

/// Friction of a dry thread, `K`. Common practice, no source.
pub const DRY: f64 = 0.20;

/// Share of the proof stress a screw is tightened to. Common practice, no source.
pub const SHARE: f64 = 0.65;

fn thread(name: &str) -> Option<&'static Thread> {
    THREADS.iter().find(|thread| thread.name.eq_ignore_ascii_case(name.trim()))
}

/// Width across the flats of the hexagon head of a coarse metric thread, in millimetres. None for another thread.
///
/// Source: ISO 4017 (from memory); older heads of M10 and M12 are 17 and 19 mm.
#[must_use]
pub fn across_flats(name: &str) -> Option<u8> {
    thread(name).map(|thread| thread.across_flats)
}

/// Stress area of a coarse metric thread. None for another one.
///
/// ```text
/// A_s = π/4 (d - 0.9382 p)²
/// ```
///
/// Source: ISO 898-1, 9.1.6 (clause from memory).
#[must_use]
pub fn stress_area(name: &str) -> Option<SquareMillimetres> {
    let thread = thread(name)?;
    let core = thread.diameter - 0.9382 * thread.pitch;
    Some(SquareMillimetres(PI / 4.0 * core * core))
}

/// Force in a screw tightened to a share of its proof stress.
///
/// Source: `F = share · σ · A_s`.
#[must_use]
pub fn preload(name: &str, proof: Megapascals, share: f64) -> Option<Newtons> {
    stress_area(name).map(|area| Newtons(share * proof.0 * area.0))
}

/// Torque that brings a screw to that force. The maker of a bracket may ask for less: castings bear less than screws.
///
/// ```text
/// T = K d F
/// ```
///
/// Source: common practice of the short-form torque equation; `K` is 0.2 dry, 0.15 with anti-seize.
#[must_use]
pub fn torque(name: &str, proof: Megapascals, share: f64, friction: f64) -> Option<NewtonMetres> {
    let diameter = thread(name)?.diameter;
    preload(name, proof, share).map(|force| NewtonMetres(friction * diameter / 1000.0 * force.0))
}
