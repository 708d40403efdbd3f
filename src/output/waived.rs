//! What is waived, for people: the finding, who accepted it, until when and why.

use std::fmt::Write as _;

use super::about;
use crate::text::plain::spelled as words;
use crate::verdict::Evaluation;

/// A paragraph each.
#[must_use]
pub fn waived<R>(evaluation: &Evaluation<R>) -> String {
    let mut out = String::new();
    for finding in &evaluation.waived {
        let Some(waived) = &finding.waived else { continue };
        let _ = writeln!(out, "waived {}[{}] {}", finding.severity, finding.rule.name, words(&about(finding)));
        let by = format!(
            "{} `{}`, approved by {} on {}, until {}, reference {}",
            waived.departure, waived.id, waived.approver, waived.approved_on, waived.expires, waived.reference
        );
        let _ = writeln!(out, "  {}", words(&by));
        let _ = writeln!(out, "  {}", words(waived.reason.trim()));
        if let Some(instead) = &waived.compensation {
            let _ = writeln!(out, "  instead: {}", words(instead.trim()));
        }
    }
    if !out.is_empty() {
        out.push('\n');
    }
    out
}
