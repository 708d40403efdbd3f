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

/// What a finding says beside its help of those told under it: where else, and how many follow.
fn gathered(finding: &Finding) -> Option<String> {
    let alike = (!finding.alike().is_empty()).then(|| format!("the same problem at {}", elsewhere(finding.alike())));
    let follow = match finding.follow().len() {
        0 => None,
        1 => Some("1 more finding follows from this; `--all` shows it".into()),
        count => Some(format!("{count} more findings follow from this; `--all` shows them")),
    };
    let said: Vec<String> = alike.into_iter().chain(follow).collect();
    (!said.is_empty()).then(|| said.join("; "))
}

/// How many ends are named one by one.
const MOST_NAMED: usize = 6;

/// `hop a, hop b and 3 more`: each place once.
fn elsewhere(alike: &[Finding]) -> String {
    let mut named: Vec<String> = Vec::new();
    for finding in alike {
        let end = finding.end.map(|end| format!(" {}", end.letter())).unwrap_or_default();
        let name = format!("{}{end}", finding.hop.as_deref().unwrap_or_default());
        if !named.contains(&name) {
            named.push(name);
        }
    }
    let more = named.len().saturating_sub(MOST_NAMED);
    named.truncate(MOST_NAMED);
    let more = if more > 0 { format!(" and {more} more") } else { String::new() };
    format!("{}{more}", named.join(", "))
}

/// The help, and what is told under a finding.
fn help(finding: &Finding) -> Option<String> {
    let said: Vec<String> = finding.help.clone().into_iter().chain(gathered(finding)).collect();
    (!said.is_empty()).then(|| said.join("\n"))
}

/// The message with the hop it is about.
fn about(finding: &Finding) -> String {
    let hop = finding.hop.as_ref().map(|hop| format!("{hop}: ")).unwrap_or_default();
    format!("{hop}{}", finding.message)
}
