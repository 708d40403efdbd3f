//! Rules on what hops share at a site.

pub mod antenna_in_beam;
pub mod antennas_collide;
pub mod antennas_too_near;
pub mod live_antenna_on_climb;
pub mod supply_port_used_twice;
pub mod supply_shared_overloaded;
pub mod supply_shared_unstated;
