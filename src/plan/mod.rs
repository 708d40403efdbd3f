//! The frequency plan of a network: which end sends where, in which polarisation and half, and what its receiver bears.
//!
//! [`lines`] lists the plan as it is, out of the air; [`propose`] looks for a better one within what radios, antennas, codes
//! and licences allow, by the [`search`] for the best settings of many hops. Tables, JSON and drawings are made of the lines.

mod drawn;
mod json;
mod lines;
mod over_air;
mod proposal;
pub mod search;
mod settings;
mod table;

pub use drawn::drawn;
pub use json::json;
pub use lines::{Bears, Line, Standing, lines};
pub use proposal::{Move, Proposal, Refusal, in_words, moves, propose};
pub use settings::Setting;
pub use table::{standing_in_words, table};
