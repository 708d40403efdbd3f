//! Rules on levels, margins and availability.

pub mod acceptance_window_too_tight;
pub mod availability_below_objective;
pub mod availability_within_tolerance;
pub mod canceller_unstated;
pub mod capacity_out_of_reach;
pub mod cross_polar_too_low;
pub mod crossing_not_judged;
pub mod errored_above_objective;
pub mod fade_margin_below_objective;
pub mod held_level_too_low;
pub mod level_above_overload;
pub mod level_not_shown;
pub mod level_off_readout;
pub mod multipath_not_judged;
pub mod near_field_loss;
pub mod nothing_to_align_by;
pub mod power_control_unstated;
pub mod side_lobe_off_readout;
pub mod sweep_beyond_fine_azimuth;
pub mod threshold_impossible;
pub mod threshold_unusual;
pub mod up_fade_above_overload;
pub mod wet_antenna_not_counted;
pub mod wet_snow_not_judged;
