//! Rules on cable, power, surge protection and sealing.

pub mod arrester_missing;
pub mod arrester_unfit;
pub mod cable_category_too_low;
pub mod cable_not_for_outdoors;
pub mod cable_not_sealed;
pub mod cable_unscreened;
pub mod conductor_not_copper;
pub mod no_operating_point;
pub mod port_cannot_carry;
pub mod port_used_twice;
pub mod radio_overvoltage;
pub mod radio_undervoltage;
pub mod radio_unpowered;
pub mod readout_port_occupied;
pub mod run_too_long;
pub mod supply_not_accepted;
pub mod supply_overloaded;
pub mod supply_passes_no_data;
pub mod voltage_reserve_small;
