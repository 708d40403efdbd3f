//! From a scope to what counts: every hop computed and judged, then severities, waivers and the baseline.

pub mod baseline;
pub mod causes;
mod evaluate;
pub mod fingerprint;
mod one_network;
mod open_hop;
mod set_aside;
mod taken;
pub mod waivers;

pub use evaluate::*;
pub use one_network::HopRun;
pub use open_hop::OpenHop;
pub use set_aside::SetAside;
