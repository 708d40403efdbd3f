//! Findings to be heard: one thing after the other, no drawing, nothing said by place or colour.
//!
//! Severity and rule first, then the message, the place, every label with its line, and the help.

use std::fmt::Write as _;

use super::region::{Base, Region};
use crate::finding::Finding;
use crate::text::plain::spelled as words;
use crate::verdict::Evaluation;

/// All findings, a paragraph each.
#[must_use]
pub fn narrated<R>(evaluation: &Evaluation<R>, base: &Base) -> String {
    let each = evaluation.findings.iter().map(|finding| paragraph(finding, evaluation, base));
    each.collect::<Vec<_>>().concat()
}

fn paragraph<R>(finding: &Finding, evaluation: &Evaluation<R>, base: &Base) -> String {
    let mut out = String::new();
    let _ = writeln!(out, "{} {}", finding.severity, finding.rule.name);
    let _ = writeln!(out, "{}", words(&super::about(finding)));
    for (number, label) in finding.labels.iter().enumerate() {
        let region = Region::of(&label.spot, &evaluation.files, base);
        let opening = if number == 0 { "at" } else { "see" };
        let _ = writeln!(out, "{opening} {}: {}", words(&region.place()), words(&label.text));
        if !region.line.is_empty() {
            let _ = writeln!(out, "  the line reads: {}", words(&region.line));
        }
    }
    if let Some(help) = &finding.help {
        let _ = writeln!(out, "help: {}", words(help));
    }
    if let Some(gathered) = super::gathered(finding) {
        let _ = writeln!(out, "{}", words(&gathered));
    }
    out.push('\n');
    out
}
