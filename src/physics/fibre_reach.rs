//! How far an optical interface reaches over a kind of fibre, and what the fibre and its connectors take.

use crate::units::{Decibels, DecibelsPerKilometre, Metres};

/// How far an interface reaches over a fibre.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reach {
    /// Longest fibre.
    pub length: Metres,
    /// Most loss from end to end.
    pub loss: Decibels,
    /// Wavelength, nanometres; the shorter one of two, where a fibre loses more.
    pub wavelength: u16,
}

/// Interface, kinds of fibre, reach in metres, loss in decibels, wavelength in nanometres.
///
/// Source: IEEE 802.3-2022, clauses 38, 52, 59, 112 and 114 (second-hand and from memory, not seen; reaches of SX, SR and LR
/// are quoted alike by several public tables).
const TABLE: &[(&str, &[&str], f64, f64, u16)] = &[
    ("1000BASE-SX", &["OM1"], 275.0, 2.6, 850),
    ("1000BASE-SX", &["OM2", "OM3", "OM4", "OM5"], 550.0, 3.56, 850),
    ("1000BASE-LX", &["OM1", "OM2", "OM3"], 550.0, 2.35, 1310),
    ("1000BASE-LX", &["OS2"], 5000.0, 4.57, 1310),
    ("1000BASE-LX10", &["OS2"], 10_000.0, 6.0, 1310),
    ("1000BASE-BX10-D", &["OS2"], 10_000.0, 6.0, 1310),
    ("1000BASE-BX10-U", &["OS2"], 10_000.0, 6.0, 1310),
    ("10GBASE-SR", &["OM1"], 33.0, 2.4, 850),
    ("10GBASE-SR", &["OM2"], 82.0, 2.3, 850),
    ("10GBASE-SR", &["OM3"], 300.0, 2.6, 850),
    ("10GBASE-SR", &["OM4", "OM5"], 400.0, 2.9, 850),
    ("10GBASE-LR", &["OS2"], 10_000.0, 6.2, 1310),
    ("25GBASE-SR", &["OM3"], 70.0, 1.8, 850),
    ("25GBASE-SR", &["OM4", "OM5"], 100.0, 1.9, 850),
    ("25GBASE-LR", &["OS2"], 10_000.0, 6.3, 1310),
];

/// What a mated pair of connectors takes at most.
///
/// Source: ANSI/TIA-568.3-D (from memory, not seen).
const MATED_PAIR: f64 = 0.75;

/// What a splice takes at most.
///
/// Source: ANSI/TIA-568.3-D (from memory, not seen).
const SPLICE: f64 = 0.3;

/// How far an interface reaches over a kind of fibre, both by the names of their standards; none where they do not go together.
#[must_use]
pub fn reach(interface: &str, fibre: &str) -> Option<Reach> {
    let (_, _, length, loss, wavelength) =
        TABLE.iter().find(|(name, fibres, ..)| *name == interface && fibres.contains(&fibre))?;
    Some(Reach { length: Metres(*length), loss: Decibels(*loss), wavelength: *wavelength })
}

/// The most that a kind of fibre may lose for each kilometre at a wavelength.
///
/// Source: ISO/IEC 11801-1:2017 and ANSI/TIA-568.3-D (second-hand): 3.5 dB/km at 850 nm (OM5 3.0) and 1.5 dB/km at 1300 nm for
/// multimode fibre, 0.4 dB/km for OS2.
#[must_use]
pub fn most_attenuation(fibre: &str, wavelength: u16) -> DecibelsPerKilometre {
    DecibelsPerKilometre(match (fibre, wavelength) {
        ("OS2", _) => 0.4,
        ("OM5", ..1000) => 3.0,
        (_, ..1000) => 3.5,
        _ => 1.5,
    })
}

/// Loss of a channel of fibre, `A`.
///
/// ```text
/// A = α L + 0.75 dB · mated pairs + 0.3 dB · splices
/// ```
///
/// The connectors in the two pluggables are in the loss that the interface allows.
///
/// Source: ANSI/TIA-568.3-D (from memory, not seen).
#[must_use]
pub fn channel_loss(attenuation: DecibelsPerKilometre, length: Metres, mated_pairs: u8, splices: u8) -> Decibels {
    attenuation * length + Decibels(MATED_PAIR * f64::from(mated_pairs) + SPLICE * f64::from(splices))
}
