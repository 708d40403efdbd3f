//! Small helpers over plain text that know nothing of networks.

pub mod hash;
pub mod nearest;
pub mod xml;
