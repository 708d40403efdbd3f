//! A cable did not pass its test.

use crate::rules::prelude::*;

rule! {
    /// A cable did not pass its test.
    ///
    /// A pair that is open, shorted or crossed, or a screen that is not through, carries neither the rate nor the power it was
    /// chosen for, and a screen that is open is no protection against surges.
    ///
    /// Source: the category limits of ISO/IEC 11801-1 that the test applies.
    severity: Error,
    waivable: EQUIPMENT,
    check: Record(check),
}

fn check(_: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let record = sheet.document;
    for (i, run) in record.runs.iter().enumerate().filter(|(_, run)| run.cable_test == Some(TestResult::Failed)) {
        let message = format!("end {}: the cable to port {} failed its test", sheet.end, run.port);
        let finding = found.report(&RULE, at!(record.runs[i].cable_test), message, "not sound");
        finding.help("refit the plugs, or pull another cable, and test again");
    }
}
