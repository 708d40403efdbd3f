//! One line a finding: `path:line:column: severity[rule] hop: message`.

use std::fmt::Write as _;

use super::about;
use super::region::located;
use crate::finding::Spot;
use crate::text::plain::spelled;
use crate::verdict::Evaluation;

/// Findings a line each, for editors and for reading many at once.
#[must_use]
pub fn concise<R>(evaluation: &Evaluation<R>) -> String {
    let mut out = String::new();
    for finding in &evaluation.findings {
        let place = finding.labels.first().map(|label| match located(&label.spot, &evaluation.files) {
            Some((file, span)) => {
                let at = file.position(span.start);
                format!("{}:{}:{}", file.path, at.line, at.column)
            }
            None => {
                if let Spot::Path(path) = &label.spot {
                    path.clone()
                } else {
                    String::new()
                }
            }
        });
        let line =
            format!("{}: {}[{}] {}", place.unwrap_or_default(), finding.severity, finding.rule.name, about(finding));
        let line = super::gathered(finding).map_or_else(|| line.clone(), |gathered| format!("{line} ({gathered})"));
        // Text of a spec must not break the line.
        let _ = writeln!(out, "{}", spelled(&line));
    }
    out
}
