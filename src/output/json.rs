//! Findings as JSON, version 1: stable keys in a stable order, lines and columns from 1, columns in UTF-16 units.

use serde::Serialize;

use super::summary::Counts;
use crate::evaluate::Evaluation;
use crate::finding::{Finding, Label, Spot};
use crate::network::Files;
use crate::source::LineIndex;

#[derive(Serialize)]
struct Report<'a> {
    format_version: u32,
    program: &'static str,
    version: &'static str,
    summary: Summary,
    findings: Vec<Item<'a>>,
}

#[derive(Serialize)]
struct Summary {
    files: usize,
    hops: usize,
    errors: usize,
    warnings: usize,
    advice: usize,
}

#[derive(Serialize)]
struct Item<'a> {
    rule: &'static str,
    family: &'static str,
    severity: &'static str,
    default_severity: &'static str,
    hop: Option<&'a str>,
    message: &'a str,
    help: Option<&'a str>,
    labels: Vec<Mark<'a>>,
}

#[derive(Serialize)]
struct Mark<'a> {
    primary: bool,
    text: &'a str,
    path: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    range: Option<Range>,
}

#[derive(Serialize)]
struct Range {
    start_byte: usize,
    end_byte: usize,
    start_line: usize,
    start_column: usize,
    end_line: usize,
    end_column: usize,
}

/// All findings with their places, one JSON object.
#[must_use]
pub fn json<R>(evaluation: &Evaluation<R>) -> String {
    let counts = Counts::of(evaluation);
    let report = Report {
        format_version: 1,
        program: "hopwright",
        version: env!("CARGO_PKG_VERSION"),
        summary: Summary {
            files: evaluation.files.list.len(),
            hops: evaluation.hop_count,
            errors: counts.errors,
            warnings: counts.warnings,
            advice: counts.advice,
        },
        findings: evaluation.findings.iter().map(|finding| item(finding, &evaluation.files)).collect(),
    };
    let mut text = serde_json::to_string_pretty(&report).expect("strings and numbers always serialise");
    text.push('\n');
    text
}

fn item<'a>(finding: &'a Finding, files: &Files) -> Item<'a> {
    Item {
        rule: finding.rule.name,
        family: finding.rule.family,
        severity: finding.severity.word(),
        default_severity: finding.rule.severity.word(),
        hop: finding.hop.as_deref(),
        message: &finding.message,
        help: finding.help.as_deref(),
        labels: finding.labels.iter().enumerate().map(|(number, label)| mark(label, number == 0, files)).collect(),
    }
}

fn mark<'a>(label: &'a Label, primary: bool, files: &Files) -> Mark<'a> {
    let found = files.locate(&label.spot);
    let file = found.as_ref().and_then(|found| files.get(found.file));
    let (path, range) = match (&label.spot, found, file) {
        (_, Some(found), Some(file)) => {
            let lines = LineIndex::new(&file.text);
            let (start, end) = (lines.position(found.span.start), lines.position(found.span.end));
            let range = Range {
                start_byte: found.span.start,
                end_byte: found.span.end,
                start_line: start.line,
                start_column: start.column,
                end_line: end.line,
                end_column: end.column,
            };
            (file.path.clone(), Some(range))
        }
        (Spot::Path(path), ..) => (path.clone(), None),
        _ => (String::new(), None),
    };
    Mark { primary, text: &label.text, path, range }
}
