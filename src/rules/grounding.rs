//! Rules on the grounding conductor.

pub mod copper_between_earths;
pub mod earth_bond_unstated;
pub mod earth_not_bonded;
pub mod ground_bond_unstated;
pub mod ground_conductor_bent;
pub mod ground_conductor_long;
pub mod ground_conductor_missing;
pub mod ground_conductor_too_thin;
pub mod ground_metal_unlisted;
