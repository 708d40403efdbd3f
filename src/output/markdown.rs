//! Findings as a Markdown table, for the summary of a job or the body of a note.
//!
//! Text from a specification is shown as it stands: it makes no link, no heading, no cell, and calls nobody by name.

use std::fmt::Write as _;

use super::region::{Base, Region};
use super::{about, summary};
use crate::finding::Finding;
use crate::finding::rule::Severity;
use crate::verdict::Evaluation;

/// The most bytes of a summary that runners take is 1 MiB; beyond it the whole is refused.
const MOST: usize = 1_000_000;

/// The total, then a row a finding, worst first.
#[must_use]
pub fn markdown<R>(evaluation: &Evaluation<R>, base: &Base) -> String {
    let mut out = format!("**hopwright**: {}\n", escaped(&summary(evaluation)));
    let mut sorted: Vec<&Finding> = evaluation.findings.iter().collect();
    sorted.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
    if !sorted.is_empty() {
        out.push_str("\n| severity | rule | finding | place |\n| --- | --- | --- | --- |\n");
    }
    for (number, finding) in sorted.iter().enumerate() {
        let row = row(finding, evaluation, base);
        if out.len() + row.len() > MOST {
            let _ = writeln!(out, "\n{} more are left out here; the JSON report has them all.", sorted.len() - number);
            break;
        }
        out.push_str(&row);
    }
    out
}

fn row<R>(finding: &Finding, evaluation: &Evaluation<R>, base: &Base) -> String {
    let region = finding.labels.first().map(|label| Region::of(&label.spot, &evaluation.files, base));
    let place = region.map(|region| match region.range {
        Some((start, _)) => format!("{}:{}", region.path, start.line),
        None => region.path,
    });
    let severity = match finding.severity {
        Severity::Error => "**error**",
        other => other.word(),
    };
    let help = super::help(finding)
        .map(|help| format!("<br>help: {}", escaped(&help).replace('\n', "<br>")))
        .unwrap_or_default();
    let (rule, what) = (finding.rule.name, escaped(&about(finding)));
    format!("| {severity} | {rule} | {what}{help} | {} |\n", escaped(&place.unwrap_or_default()))
}

/// Text that is nothing but text, within a cell too.
pub(super) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            // A name after an at sign would be called, a number after a hash linked.
            '@' => out.push_str("&#64;"),
            '#' => out.push_str("&#35;"),
            '\\' | '`' | '*' | '_' | '[' | ']' | '|' | '~' | '!' => out.extend(['\\', c]),
            c if c.is_control() => out.push(' '),
            c => out.push(c),
        }
    }
    // A bare address would be made a link of.
    out.replace("://", "&#58;//").replace("www.", "www&#46;")
}
