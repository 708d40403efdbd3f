//! Rules on frequencies, halves and power.

pub mod frequency_outside_antenna;
pub mod frequency_outside_feeder;
pub mod frequency_outside_radio;
pub mod no_common_state;
pub mod same_duplex_half;
pub mod transmit_power_out_of_range;
