//! From a scope to what counts: every hop computed and judged, then severities, waivers and the baseline.

pub mod baseline;
mod evaluate;
pub mod fingerprint;
mod one_network;
mod set_aside;
pub mod waivers;

pub use evaluate::*;
pub use one_network::{HopRun, OpenHop};
pub use set_aside::SetAside;
