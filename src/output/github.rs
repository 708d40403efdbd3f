//! Findings as commands to the runner of GitHub's workflows, which shows them beside the lines of a pull request.
//!
//! Only the first few of each level are shown there, so the worst come first, and the total before the advice. Text is
//! escaped: nothing a specification says becomes a command or a property of one.

use std::fmt::Write as _;

use super::region::{Base, Region};
use super::{about, summary};
use crate::finding::Finding;
use crate::finding::rule::Severity;
use crate::verdict::Evaluation;

/// An annotation a finding and one with the total.
#[must_use]
pub fn github<R>(evaluation: &Evaluation<R>, base: &Base) -> String {
    let mut out = String::new();
    for severity in [Severity::Error, Severity::Warning, Severity::Advice] {
        if severity == Severity::Advice {
            let _ = writeln!(out, "::notice title=hopwright::{}", data(&summary(evaluation)));
        }
        for finding in evaluation.findings.iter().filter(|finding| finding.severity == severity) {
            let _ = writeln!(out, "{}", annotation(finding, evaluation, base));
        }
    }
    out
}

fn annotation<R>(finding: &Finding, evaluation: &Evaluation<R>, base: &Base) -> String {
    let command = match finding.severity {
        Severity::Error => "error",
        Severity::Warning => "warning",
        Severity::Advice => "notice",
    };
    let mut properties = Vec::new();
    if let Some(label) = finding.labels.first() {
        let region = Region::of(&label.spot, &evaluation.files, base);
        properties.push(format!("file={}", property(&region.path)));
        if let Some((start, end)) = region.range {
            properties.push(format!("line={},endLine={}", start.line, end.line));
            // Columns are refused where they lie on different lines.
            if start.line == end.line {
                properties.push(format!("col={},endColumn={}", start.column, end.column));
            }
        }
    }
    properties.push(format!("title={}", property(finding.rule.name)));
    let help = super::help(finding).map(|help| format!("\nhelp: {help}")).unwrap_or_default();
    format!("::{command} {}::{}", properties.join(","), data(&format!("{}{help}", about(finding))))
}

/// A message, as the runner takes it apart.
fn data(text: &str) -> String {
    let shown = text.replace(|c: char| c.is_control() && c != '\r' && c != '\n', " ");
    shown.replace('%', "%25").replace('\r', "%0D").replace('\n', "%0A")
}

/// A property, which also ends at a comma or a colon.
fn property(text: &str) -> String {
    data(text).replace(':', "%3A").replace(',', "%2C")
}
