//! The last line: how much was looked at and what came of it.

use std::fmt::Write as _;
use std::path::Path;

use crate::finding::faults::waivers::EXPIRED;
use crate::finding::rule::Severity;
use crate::source::is_yaml;
use crate::verdict::Evaluation;

/// How many findings there are of each severity.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Counts {
    /// Must not be built.
    pub errors: usize,
    /// Likely to hurt.
    pub warnings: usize,
    /// Worth knowing.
    pub advice: usize,
}

impl Counts {
    /// Counts the findings of an evaluation.
    #[must_use]
    pub fn of<R>(evaluation: &Evaluation<R>) -> Self {
        let count = |severity| evaluation.findings.iter().filter(|finding| finding.severity == severity).count();
        Self { errors: count(Severity::Error), warnings: count(Severity::Warning), advice: count(Severity::Advice) }
    }
}

/// `4 hops in 14 files: no findings`.
#[must_use]
pub fn summary<R>(evaluation: &Evaluation<R>) -> String {
    let counts = Counts::of(evaluation);
    let seen = format!(
        "{} in {}",
        plural(evaluation.hop_count, "hop", "hops"),
        plural(evaluation.files.list.len(), "file", "files")
    );
    let aside = aside(evaluation);
    if evaluation.findings.is_empty() {
        return format!("{seen}: no findings{aside}");
    }
    let parts = [
        (counts.errors, plural(counts.errors, "error", "errors")),
        (counts.warnings, plural(counts.warnings, "warning", "warnings")),
        (counts.advice, format!("{} of advice", plural(counts.advice, "piece", "pieces"))),
    ];
    let parts: Vec<String> = parts.into_iter().filter(|(count, _)| *count > 0).map(|(_, words)| words).collect();
    format!("{seen}: {}{aside}", parts.join(", "))
}

/// What does not count: waived, and on which day that was decided; and what was not looked at.
fn aside<R>(evaluation: &Evaluation<R>) -> String {
    let mut aside = String::new();
    if !evaluation.waived.is_empty() {
        let _ = write!(aside, "; {} waived", evaluation.waived.len());
    }
    if !evaluation.baselined.is_empty() {
        let _ = write!(aside, "; {} in the baseline", evaluation.baselined.len());
    }
    let expired = evaluation.findings.iter().filter(|finding| *finding.rule == EXPIRED).count();
    if expired > 0 {
        let _ = write!(aside, "; {} expired", plural(expired, "waiver", "waivers"));
    }
    let files = evaluation.passed_over.iter().filter(|path| is_yaml(Path::new(path))).count();
    let folders = evaluation.passed_over.len() - files;
    let counted = [(files, "YAML file", "YAML files"), (folders, "folder", "folders")];
    let told: Vec<String> =
        counted.iter().filter(|(count, ..)| *count > 0).map(|(count, one, many)| plural(*count, one, many)).collect();
    if !told.is_empty() {
        let _ = write!(aside, "; {} passed over (`-v` names them)", told.join(" and "));
    }
    if let Some(today) = evaluation.today {
        let _ = write!(aside, "; waivers as of {today}");
    }
    aside
}

fn plural(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}
