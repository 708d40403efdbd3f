//! Exchange with other programs, by open formats.
//!
//! ```text
//! import  tables, waypoints ─items→ plan against the network → byte edits and new documents, tried before they are written
//! ```
//!
//! Import guesses nothing: what could be read in two ways is a fault at its cell, all faults come out of one run, and
//! nothing is written if there is one.

mod columns;
mod document;
mod fault;
mod figures;
mod item;
mod plan;
mod plan_words;
mod swap;
mod table;
mod waypoints;
mod xml;
mod yaml;

pub use columns::{Column, HOPS, Holds, SITES, columns_of};
pub use fault::Fault;
pub use item::{Item, Value, What};
pub use plan::{Changed, New, Plan, plan};
pub use plan_words::in_words;
pub use table::{Form, read_table};
pub use waypoints::read_waypoints;
pub use xml::MOST_BYTES;
