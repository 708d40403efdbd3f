//! Findings as commands to the runner of GitHub's workflows, which shows them beside the lines of a pull request.
//!
//! The total comes first, then the worst. Only ten of each level are shown for a step, so where there are more, those of one
//! rule share an annotation. Text is escaped: nothing a specification says becomes a command or a property of one.

use std::fmt::Write as _;

use super::region::{Base, Region};
use super::{about, summary};
use crate::finding::Finding;
use crate::finding::rule::Severity;
use crate::verdict::Evaluation;

/// The annotations of a level that the forge shows for one step of a workflow.
const SHOWN: usize = 10;

/// One with the total, then an annotation a finding, or a rule where they are many.
#[must_use]
pub fn github<R>(evaluation: &Evaluation<R>, base: &Base) -> String {
    let mut out = format!("::notice title=hopwright::{}\n", data(&summary(evaluation)));
    for severity in [Severity::Error, Severity::Warning, Severity::Advice] {
        let level: Vec<&Finding> = evaluation.findings.iter().filter(|finding| finding.severity == severity).collect();
        // The total is a notice too.
        let room = if severity == Severity::Advice { SHOWN - 1 } else { SHOWN };
        if level.len() <= room {
            for finding in level {
                let _ = writeln!(out, "{}", annotation(finding, None, evaluation, base));
            }
            continue;
        }
        for (first, more) in by_rule(&level) {
            let _ = writeln!(out, "{}", annotation(first, Some(more.as_slice()), evaluation, base));
        }
    }
    out
}

/// The findings of each rule, those of the first rule first: the first of them, and the others.
fn by_rule<'f>(findings: &[&'f Finding]) -> Vec<(&'f Finding, Vec<&'f Finding>)> {
    let mut groups: Vec<(&Finding, Vec<&Finding>)> = Vec::new();
    for finding in findings {
        match groups.iter_mut().find(|(first, _)| first.rule == finding.rule) {
            Some((_, more)) => more.push(finding),
            None => groups.push((finding, Vec::new())),
        }
    }
    groups.sort_by_key(|(_, more)| std::cmp::Reverse(more.len()));
    groups
}

/// The most hops that are named in an annotation.
const NAMED: usize = 20;

/// What one annotation says of the others of its rule.
fn others(more: &[&Finding]) -> String {
    let mut hops: Vec<&str> = more.iter().filter_map(|finding| finding.hop.as_deref()).collect();
    hops.dedup();
    let rest = hops.len().saturating_sub(NAMED);
    hops.truncate(NAMED);
    let rest = if rest > 0 { format!(" and {rest} more") } else { String::new() };
    let of = if hops.is_empty() { String::new() } else { format!(": {}{rest}", hops.join(", ")) };
    format!("\n{} more of this rule{of}", more.len())
}

fn annotation<R>(finding: &Finding, more: Option<&[&Finding]>, evaluation: &Evaluation<R>, base: &Base) -> String {
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
    let more = more.filter(|more| !more.is_empty()).map(others).unwrap_or_default();
    format!("::{command} {}::{}", properties.join(","), data(&format!("{}{help}{more}", about(finding))))
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
