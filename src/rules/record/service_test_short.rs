//! The service test ran for less time than it should.

use crate::rules::prelude::*;

rule! {
    /// The service test ran for less time than it should.
    ///
    /// Some faults come by the minute: a radio that warms up, a state that changes in gusts, a supply that sags. The
    /// threshold is `limits.service_test`, 10 min unless set.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    waivable: EVIDENCE,
    check: Record(check),
}

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (record, limit) = (sheet.document, &sheet.limits.service_test);
    let [.., long_enough] = sheet.service_holds(hop.resolved);
    let (Some(duration), Some(false)) = (&record.service.duration, long_enough) else { return };
    let (has, wants, by) = apart(duration.value, limit.value());
    let message = format!("end {}: the service test ran for {has}, {by} less than {wants}", sheet.end);
    let finding = found.report(&RULE, at!(record.service.duration), message, "as tested");
    finding.measured(duration.value, Worse::Lower);
    if !limit.assumed {
        finding.because(limit.place, "the least it must run");
    }
    finding.help("test again for longer");
}
