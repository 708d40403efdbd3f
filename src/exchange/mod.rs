//! Exchange with other programs, by open formats.
//!
//! ```text
//! import  tables, waypoints ─items→ plan against the network → byte edits and new documents, tried before they are written
//! export  sheets and findings ─marks→ GeoJSON, KML, tables
//! ```
//!
//! Import guesses nothing: what could be read in two ways is a fault at its cell, all faults come out of one run, and
//! nothing is written if there is one. Export computes nothing: its numbers are those of the sheet.

mod bill;
mod columns;
mod document;
mod fault;
mod figures;
mod geojson;
mod item;
mod kml;
mod licence;
mod mark;
mod network_table;
mod plan;
mod plan_words;
mod sheet_table;
mod swap;
mod table;
mod waypoints;
mod xml;
mod yaml;

pub use bill::bill;
pub use columns::{Column, HOPS, Holds, SITES, What, columns_of};
pub use fault::Fault;
pub use geojson::geojson;
pub use item::{Item, Value};
pub use kml::kml;
pub use licence::{application_rows, applications};
pub use mark::HopMark;
pub use network_table::network_table;
pub use plan::{Changed, New, Plan, plan};
pub use plan_words::in_words;
pub use sheet_table::{SheetRow, sheet_table};
pub use table::{Form, read_table};
pub use waypoints::read_waypoints;
pub use xml::MOST_BYTES;
