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

/// Words of our own may quote a value, and a value may hold anything that an escape can spell.
fn words(text: &str) -> String {
    text.chars().map(|c| if upsets(c) { '?' } else { c }).collect()
}

/// Whether a character would change more of the terminal than its own place: controls, the byte-order mark, and the marks
/// that turn the direction of writing.
fn upsets(c: char) -> bool {
    let turns = matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    c.is_control() || c == '\u{feff}' || turns
}

/// Text for people that no runner takes for a command: one starts at `::` at the beginning of a line, or anywhere at `##[`.
#[must_use]
pub fn harmless(text: &str) -> String {
    if !text.contains("::") && !text.contains("##[") {
        return text.to_owned();
    }
    let lines = text.split_inclusive('\n').map(|line| {
        let rest = line.trim_start();
        let indent = &line[..line.len() - rest.len()];
        let guard = if rest.starts_with("::") { r"\" } else { "" };
        format!("{indent}{guard}{rest}").replace("##[", r"##\[")
    });
    lines.collect()
}

#[cfg(test)]
mod tests {
    use super::harmless;

    #[test]
    fn no_line_is_a_command() {
        assert_eq!(harmless("a ::b\n  ::error::x\n::y\n"), "a ::b\n  \\::error::x\n\\::y\n");
        assert_eq!(harmless("12 | ##[group]x"), r"12 | ##\[group]x");
    }
}
