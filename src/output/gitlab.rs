//! Findings as the code quality report of GitLab: one JSON array, empty when there is nothing to say.

use serde::Serialize;

use super::about;
use super::region::{Base, Region};
use crate::finding::rule::Severity;
use crate::verdict::Evaluation;

#[derive(Serialize)]
struct Issue {
    description: String,
    check_name: &'static str,
    fingerprint: String,
    severity: &'static str,
    location: Location,
}

#[derive(Serialize)]
struct Location {
    path: String,
    lines: Lines,
}

#[derive(Serialize)]
struct Lines {
    begin: usize,
}

/// An issue a finding.
#[must_use]
pub fn gitlab<R>(evaluation: &Evaluation<R>, base: &Base) -> String {
    let issue = |finding: &crate::finding::Finding| {
        let region = finding.labels.first().map(|label| Region::of(&label.spot, &evaluation.files, base));
        let begin = region.as_ref().and_then(|region| region.range).map_or(1, |(start, _)| start.line);
        Issue {
            description: super::gathered(finding)
                .map_or_else(|| about(finding), |more| format!("{} ({more})", about(finding))),
            check_name: finding.rule.name,
            fingerprint: finding.fingerprint.to_string(),
            severity: match finding.severity {
                Severity::Error => "critical",
                Severity::Warning => "minor",
                Severity::Advice => "info",
            },
            location: Location { path: region.map(|region| region.path).unwrap_or_default(), lines: Lines { begin } },
        }
    };
    let issues: Vec<Issue> = evaluation.findings.iter().map(issue).collect();
    let mut text = serde_json::to_string_pretty(&issues).expect("strings and numbers always serialise");
    text.push('\n');
    text
}
