//! The last line: how much was looked at and what came of it.

use std::path::Path;

use crate::finding::Finding;
use crate::finding::faults::waivers::EXPIRED;
use crate::finding::rule::Severity;
use crate::source::is_yaml;
use crate::verdict::{Evaluation, SetAside};

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
    /// Counts some findings.
    #[must_use]
    pub fn of<'f>(findings: impl Iterator<Item = &'f Finding>) -> Self {
        findings.fold(Self::default(), |mut counts, finding| {
            match finding.severity {
                Severity::Error => counts.errors += 1,
                Severity::Warning => counts.warnings += 1,
                Severity::Advice => counts.advice += 1,
            }
            counts
        })
    }
}

/// `4 hops in 14 files: no findings`.
#[must_use]
pub fn summary<R>(evaluation: &Evaluation<R>) -> String {
    let counts = Counts::of(evaluation.findings.iter());
    let seen = format!(
        "{} in {}",
        plural(evaluation.hop_count, "hop", "hops"),
        plural(evaluation.files.read_count(), "file", "files")
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
    let told_under = evaluation.everything().count() - evaluation.findings.len();
    let under = match told_under {
        0 => String::new(),
        1 => " (1 more follows)".into(),
        count => format!(" ({count} more follow)"),
    };
    format!("{seen}: {}{under}{aside}", parts.join(", "))
}

/// What does not count, what was not looked at, and on which day waivers were held against.
fn aside<R>(evaluation: &Evaluation<R>) -> String {
    let expired = evaluation.findings.iter().filter(|finding| *finding.rule == EXPIRED).count();
    let expired = (expired > 0).then(|| format!("{} expired", plural(expired, "waiver", "waivers")));
    let day = evaluation.today.map(|today| format!("waivers as of {today}"));
    let parts = counted(&SetAside::of(evaluation)).into_iter().chain(expired).chain(passed_over(evaluation)).chain(day);
    parts.fold(String::new(), |aside, part| aside + "; " + &part)
}

/// What patterns of `.gitignore` or `exclude` kept from being read.
fn passed_over<R>(evaluation: &Evaluation<R>) -> Option<String> {
    let files = evaluation.passed_over.iter().filter(|path| is_yaml(Path::new(path))).count();
    let folders = evaluation.passed_over.len() - files;
    let counted = [(files, "YAML file", "YAML files"), (folders, "folder", "folders")];
    let told: Vec<String> =
        counted.iter().filter(|(count, ..)| *count > 0).map(|(count, one, many)| plural(*count, one, many)).collect();
    (!told.is_empty()).then(|| format!("{} passed over (`-v` names them)", told.join(" and ")))
}

/// What was set aside, in words: only what there is.
fn counted(aside: &SetAside) -> Vec<String> {
    let (off, lowered) = (aside.off().len(), aside.lowered().len());
    let parts = [
        (aside.waived, format!("{} waived", aside.waived)),
        (aside.baselined, format!("{} in the baseline", aside.baselined)),
        (off, format!("{} off", plural(off, "rule", "rules"))),
        (lowered, format!("{} lowered", plural(lowered, "rule", "rules"))),
        (aside.not_judged, format!("{} not judged in full", plural(aside.not_judged, "hop", "hops"))),
    ];
    parts.into_iter().filter(|(count, _)| *count > 0).map(|(_, words)| words).collect()
}

fn plural(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}
