//! Findings, for people and for machines. One function a form: an evaluation in, text out.

mod clip;
mod concise;
mod full;
mod github;
mod gitlab;
mod json;
mod junit;
mod markdown;
mod narrated;
mod region;
mod sarif;
mod statistics;
mod summary;
mod waived;

use crate::finding::Finding;

pub use concise::concise;
pub use full::{Look, full};
pub use github::github;
pub use gitlab::gitlab;
pub use json::{json, report_schema};
pub use junit::junit;
pub use markdown::markdown;
pub use narrated::narrated;
pub use region::Base;
pub use sarif::sarif;
pub use statistics::{counted, statistics};
pub use summary::{Counts, summary};
pub use waived::waived;

/// The message with the hop it is about.
fn about(finding: &Finding) -> String {
    let hop = finding.hop.as_ref().map(|hop| format!("{hop}: ")).unwrap_or_default();
    format!("{hop}{}", finding.message)
}
