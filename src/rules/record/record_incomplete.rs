//! Items of the record page are not filled in.

use crate::rules::prelude::*;

rule! {
    /// Items of the record page are not filled in.
    ///
    /// An acceptance needs them: who was there and when, with what, in what weather; the settings; the level before and after
    /// locking; the voltage at the radio; the test of every cable; the grounding; the test of the service; the serial
    /// number; the decision, and with
    /// a concession where it was agreed. What is not filled in is not judged.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: Record(check),
}

fn check(_: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let record = sheet.document;
    let count = sheet.blank.len();
    if count == 0 {
        return;
    }
    let noun = if count == 1 { "item is" } else { "items are" };
    let message = format!("end {}: {count} {noun} not filled in: {}", sheet.end, sheet.blank.join(", "));
    let label = if record.decision.is_none() { "still a form" } else { "not complete" };
    let finding = found.report(&RULE, at!(record.id), message, label);
    finding.help("the keys are those on the record page of the install pack; fill in what was found");
}
