//! The laws of radio, rain, the Earth and copper: one file a phenomenon.
//!
//! Every function takes quantities and returns quantities, keeps no state and reads no file. Each names the published
//! source it follows, the range it holds in and what happens outside. Sines, powers and logarithms come from `libm`, so
//! that a number is the same to the last bit on every machine.

pub mod antenna;
pub mod antenna_gain;
pub mod atmosphere;
pub mod bodies;
pub mod bullington;
pub mod cable_handling;
pub mod cantilever;
pub mod chain;
pub mod channel_length;
pub mod clearance;
pub mod codes;
pub mod conductor;
pub mod cross_polar;
pub mod emission;
pub mod ethernet_power;
pub mod exposure;
pub mod fastener;
pub mod feeder;
pub mod fibre_reach;
pub mod filter;
pub mod fixing;
pub mod fog;
pub mod free_space;
pub mod gas;
mod gas_lines;
pub mod geodesy;
pub mod geotiff;
mod geotiff_heights;
pub mod ground_wire;
pub mod ice;
pub mod interference;
pub mod knife_edge;
pub mod link;
pub mod magnetic;
pub mod metals;
pub mod multipath;
pub mod near_field;
pub mod off_axis;
pub mod orography;
pub mod pattern;
pub mod pipe;
pub mod planning_clearance;
pub mod power_chain;
pub mod power_feed;
pub mod power_line;
pub mod rain;
pub mod rain_map;
pub mod rain_map_text;
pub mod rain_outage;
pub mod rain_rate;
pub mod raster;
pub mod readout;
pub mod receiver;
pub mod share;
pub mod snow;
pub mod swing;
pub mod terrain;
pub mod unavailability;
pub mod uncertainty;
pub mod wind;
pub mod worst_month;

/// How surely a figure is known; of several, that of the least certain.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Confidence {
    /// From memory of the document, not seen.
    Memory,
    /// Another public text quotes them.
    SecondHand,
    /// Seen in a public copy of the rule, or in a regulator's own summary of it.
    Published,
}

impl Confidence {
    /// In words.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Memory => "from memory",
            Self::SecondHand => "second-hand",
            Self::Published => "published",
        }
    }
}
