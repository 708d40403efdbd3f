//! Findings, for people and for machines. One function a form: an evaluation in, text out.

mod concise;
mod full;
mod json;
mod summary;

pub use concise::concise;
pub use full::{Look, full};
pub use json::json;
pub use summary::{Counts, summary};
