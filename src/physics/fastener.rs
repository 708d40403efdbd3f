//! What a screw bears.

use crate::units::{Megapascals, NewtonMetres, Newtons, SquareMillimetres};
use std::f64::consts::PI;

/// Threads brackets use, in millimetres, with the width of the hexagon heads of metric ones.
///
/// Source: ISO 261, coarse series; ISO 4017 for the heads (from memory); ASME B1.1, coarse series (second-hand).
const THREADS: [Thread; 15] = [
    metric("M5", 5.0, 0.8, 8),
    metric("M6", 6.0, 1.0, 10),
    metric("M8", 8.0, 1.25, 13),
    metric("M10", 10.0, 1.5, 16),
    metric("M12", 12.0, 1.75, 18),
    metric("M14", 14.0, 2.0, 21),
    metric("M16", 16.0, 2.0, 24),
    metric("M20", 20.0, 2.5, 30),
    unified("1/4-20 UNC", 0.25, 20.0),
    unified("5/16-18 UNC", 0.3125, 18.0),
    unified("3/8-16 UNC", 0.375, 16.0),
    unified("7/16-14 UNC", 0.4375, 14.0),
    unified("1/2-13 UNC", 0.5, 13.0),
    unified("9/16-12 UNC", 0.5625, 12.0),
    unified("5/8-11 UNC", 0.625, 11.0),
];

struct Thread {
    name: &'static str,
    diameter: f64,
    pitch: f64,
    /// Pitches that the diameter of the stress area is less than the outer one.
    depth: f64,
    across_flats: Option<u8>,
}

const fn metric(name: &'static str, diameter: f64, pitch: f64, across_flats: u8) -> Thread {
    Thread { name, diameter, pitch, depth: 0.9382, across_flats: Some(across_flats) }
}

const fn unified(name: &'static str, inches: f64, threads_an_inch: f64) -> Thread {
    Thread { name, diameter: 25.4 * inches, pitch: 25.4 / threads_an_inch, depth: 0.9743, across_flats: None }
}

/// What a screw is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Strength {
    /// Steel of ISO 898-1, 4.6.
    S46,
    /// Steel of ISO 898-1, 5.6.
    S56,
    /// Steel of ISO 898-1, 8.8.
    S88,
    /// Steel of ISO 898-1, 10.9.
    S109,
    /// Stainless steel of ISO 3506-1, property class 50.
    Stainless50,
    /// Stainless steel of ISO 3506-1, property class 70.
    Stainless70,
    /// Stainless steel of ISO 3506-1, property class 80.
    Stainless80,
    /// Steel of SAE J429, grade 2.
    Grade2,
    /// Steel of SAE J429, grade 5.
    Grade5,
    /// Steel of SAE J429, grade 8.
    Grade8,
}

/// The stress a screw of a strength and a thread is reckoned from. None for a thread that is not in the tables.
///
/// Source: ISO 898-1:2013, proof stress (580 `MPa` of 8.8 to 16 mm, 600 above; its 640 `MPa` are the nominal yield); ISO
/// 3506-1:2020, stress at 0.2 % (stainless screws have no proof load); SAE J429, proof stress (all second-hand, grade 8 from
/// memory).
#[must_use]
pub fn proof(name: &str, strength: Strength) -> Option<Megapascals> {
    let diameter = thread(name)?.diameter;
    Some(Megapascals(match strength {
        Strength::S46 => 225.0,
        Strength::S56 => 280.0,
        Strength::S88 if diameter <= 16.0 => 580.0,
        Strength::S88 | Strength::Stainless80 => 600.0,
        Strength::S109 => 830.0,
        Strength::Stainless50 => 210.0,
        Strength::Stainless70 => 450.0,
        Strength::Grade2 => 379.0,
        Strength::Grade5 => 586.0,
        Strength::Grade8 => 827.0,
    }))
}

/// Friction of a dry thread, `K`. Common practice, second-hand, as the three below: forces scatter by 25 to 30 % at one torque.
pub const DRY: f64 = 0.20;
/// Friction of a thread dipped in zinc, dry.
pub const GALVANISED: f64 = 0.25;
/// Friction of an oiled thread.
pub const OILED: f64 = 0.15;
/// Friction of a thread with anti-seize or wax.
pub const ANTI_SEIZE: f64 = 0.12;

/// Share of the proof stress a screw is tightened to. Common practice, no source.
pub const SHARE: f64 = 0.65;

fn thread(name: &str) -> Option<&'static Thread> {
    THREADS.iter().find(|thread| thread.name.eq_ignore_ascii_case(name.trim()))
}

/// Width across the flats of the hexagon head of a coarse metric thread, in millimetres. None for an inch thread or one that
/// is not in the tables.
///
/// Source: ISO 4017 (from memory); older heads of M10 and M12 are 17 and 19 mm.
#[must_use]
pub fn across_flats(name: &str) -> Option<u8> {
    thread(name).and_then(|thread| thread.across_flats)
}

/// Stress area of a coarse thread. None for one that is not in the tables.
///
/// ```text
/// A_s = π/4 (d - 0.9382 p)²,   0.9743 p for an inch thread
/// ```
///
/// Source: ISO 898-1, 9.1.6 (clause from memory); ASME B1.1 (second-hand).
#[must_use]
pub fn stress_area(name: &str) -> Option<SquareMillimetres> {
    let thread = thread(name)?;
    let core = thread.diameter - thread.depth * thread.pitch;
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
/// Source: common practice of the short-form torque equation; `K` by the finish of the thread, [`DRY`] and the others.
#[must_use]
pub fn torque(name: &str, proof: Megapascals, share: f64, friction: f64) -> Option<NewtonMetres> {
    let diameter = thread(name)?.diameter;
    preload(name, proof, share).map(|force| NewtonMetres(friction * diameter / 1000.0 * force.0))
}
