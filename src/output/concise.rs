//! One line a finding: `path:line:column: severity[rule] hop: message`.

use std::fmt::Write as _;

use crate::evaluate::Evaluation;
use crate::finding::Spot;
use crate::source::LineIndex;

/// Findings a line each, for editors and for reading many at once.
#[must_use]
pub fn concise<R>(evaluation: &Evaluation<R>) -> String {
    let mut out = String::new();
    for finding in &evaluation.findings {
        let place = finding.labels.first().map(|label| match &label.spot {
            Spot::Path(path) => path.clone(),
            spot => {
                let found = evaluation.files.locate(spot);
                let file = found.as_ref().and_then(|found| evaluation.files.get(found.file));
                found.zip(file).map_or_else(String::new, |(found, file)| {
                    let at = LineIndex::new(&file.text).position(found.span.start);
                    format!("{}:{}:{}", file.path, at.line, at.column)
                })
            }
        });
        let hop = finding.hop.as_ref().map(|hop| format!("{hop}: ")).unwrap_or_default();
        let (place, message) = (place.unwrap_or_default(), &finding.message);
        let line = format!("{place}: {}[{}] {hop}{message}", finding.severity, finding.rule.name);
        // Text of a spec must not break the line.
        let _ = writeln!(out, "{}", line.replace(|c: char| c.is_control(), " "));
    }
    out
}
