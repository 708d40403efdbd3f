//! Rules on bracket, support and tilt.

pub mod antenna_off_support;
pub mod fixing_overloaded;
pub mod fixings_not_judged;
pub mod metals_unlike;
pub mod nominal_size_as_diameter;
pub mod orography_not_counted;
pub mod plate_not_made;
pub mod pole_near_clamp_limit;
pub mod pole_outside_clamp;
pub mod pole_overstressed;
pub mod sway_too_great;
pub mod tilt_out_of_reach;
pub mod torque_above_thread;
pub mod wind_not_judged;
