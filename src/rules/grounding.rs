//! Rules on the grounding conductor.

pub mod ground_bond_unstated;
pub mod ground_conductor_missing;
pub mod ground_conductor_too_thin;
