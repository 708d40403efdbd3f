//! Point-to-point radio hops as YAML: checked against physics and installation rules, computed once, printed for the
//! people who design and build them.
//!
//! ```text
//! files ─source→ trees ─shape, spec→ typed specs ─network→ resolved hops ─sheet→ every computed number
//!                                                                              │
//!                             rules read the sheet → findings → output ────────┤
//!                             listing and pack set the same sheet in type ─────┤
//!                             compare subtracts two sheets ────────────────────┘
//! ```
//!
//! Each arrow is a function from a value to a value; none reaches back. [`verdict::evaluate`] walks the whole way.

pub mod air;
pub mod alternatives;
pub mod cli;
pub mod compare;
pub mod door;
pub mod drawing;
pub mod exchange;
pub mod figure;
pub mod finding;
pub mod fix;
pub mod listing;
pub mod network;
pub mod output;
#[cfg_attr(
    not(feature = "pages"),
    allow(dead_code, unused_imports, reason = "without the press nobody sets its pages")
)]
pub mod pack;
pub mod physics;
pub mod place;
pub mod plan;
pub mod rules;
pub mod shape;
pub mod sheet;
pub mod source;
pub mod spec;
pub mod standard;
pub mod text;
pub mod units;
pub mod verdict;
pub mod voice;
