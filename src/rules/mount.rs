//! Rules on bracket, support and tilt.

pub mod antenna_off_support;
pub mod plate_not_made;
pub mod pole_outside_clamp;
pub mod tilt_out_of_reach;
