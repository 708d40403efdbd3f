//! The laws of radio, rain, the Earth and copper: one file a phenomenon.
//!
//! Every function takes quantities and returns quantities, keeps no state and reads no file. Each names the published
//! source it follows, the range it holds in and what happens outside. Sines, powers and logarithms come from `libm`, so
//! that a number is the same to the last bit on every machine.

pub mod atmosphere;
pub mod conductor;
pub mod free_space;
pub mod gas;
mod gas_lines;
pub mod geodesy;
pub mod link;
pub mod magnetic;
pub mod power_feed;
pub mod rain;
pub mod rain_outage;
pub mod readout;
