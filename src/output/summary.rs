//! The last line: how much was looked at and what came of it.

use crate::evaluate::Evaluation;
use crate::rule::Severity;

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
    if evaluation.findings.is_empty() {
        return format!("{seen}: no findings");
    }
    let parts = [
        (counts.errors, plural(counts.errors, "error", "errors")),
        (counts.warnings, plural(counts.warnings, "warning", "warnings")),
        (counts.advice, format!("{} of advice", plural(counts.advice, "piece", "pieces"))),
    ];
    let parts: Vec<String> = parts.into_iter().filter(|(count, _)| *count > 0).map(|(_, words)| words).collect();
    format!("{seen}: {}", parts.join(", "))
}

fn plural(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}
