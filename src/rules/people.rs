//! Rules on people and power lines near a hop.

pub mod exposure_uncertain;
pub mod hazards_not_assessed;
pub mod people_too_near;
pub mod power_line_near;
