//! Checks of the record page are not ticked.

use crate::rules::prelude::*;

rule! {
    /// Checks of the record page are not ticked.
    ///
    /// Each stands for something that fails later when it is left out: a screw, a seal, a bond, power control. The checks an
    /// end needs follow from what is mounted there; their ids are printed beside the boxes. Nothing is asked of a rejected
    /// end.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    never_waived: PROTECTS_PEOPLE,
    check: Record(check),
}

fn check(_: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let record = sheet.document;
    let rejected = record.decision.as_ref().is_some_and(|made| made.verdict == Verdict::Rejected);
    if rejected || sheet.undone.is_empty() {
        return;
    }
    let words: Vec<&str> = sheet.undone.iter().map(|check| check.word()).collect();
    let (count, end) = (words.len(), sheet.end);
    let noun = if count == 1 { "check is" } else { "checks are" };
    let message = format!("end {end}: {count} {noun} not ticked: {}", words.join(", "));
    let (place, label) = if record.checks.is_empty() {
        (at!(record.id), "no `checks` in this record")
    } else {
        (at!(record.checks), "what is ticked")
    };
    let finding = found.report(&RULE, place, message, label);
    finding.known_at(at!(record.id));
    finding.help("do what is open and add it under `checks`, or say under `deviations` why not");
}
