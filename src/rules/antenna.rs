//! Rules on whether the figures of an antenna agree.

pub mod aperture_efficiency_impossible;
pub mod aperture_efficiency_unusual;
pub mod gain_and_beamwidth_disagree;
