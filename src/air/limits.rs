//! What is too little to count, and too near to compute.

use crate::units::{Decibels, Metres};

/// What a sender brings is counted down to this far over the noise of a receiver. A hundred thousand that bring just less
/// together raise a threshold by 0.04 dB.
pub const FLOOR: Decibels = Decibels(-70.0);

/// Antennas nearer to each other than this stand at one site: between them no path has a length, and what one puts into the
/// other is not computed.
pub const SAME_SITE: Metres = Metres(30.0);
