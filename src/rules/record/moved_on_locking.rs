//! The level moved when the screws were locked.

use super::{before_at, measured_at, read_at};
use crate::rules::prelude::*;

rule! {
    /// The level moved when the screws were locked.
    ///
    /// Final torque turns an antenna. What was a peak before is a slope after, and the first storm takes the rest. The
    /// threshold is `limits.locking_loss`, 1 dB unless set.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    waivable: SERVICE,
    check: Record(check),
}

fn check(_: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (lines, limit) = (&sheet.lines, &sheet.limits.locking);
    let (Some(moved), Some(false)) = (lines.moved.get(), sheet.stayed()) else { return };
    let (has, may, by) = apart(Decibels(moved.0.abs()), limit.value());
    let way = if moved.0 < 0.0 { "lost" } else { "gained" };
    let message = format!("end {}: locking {way} {has}, {by} more than the {may} it may", sheet.end);
    let finding = found.report(&RULE, measured_at(sheet), message, format!("{} when locked", line(&lines.measured)));
    finding.measured(Decibels(moved.0.abs()), Worse::Higher).known_at(read_at(sheet));
    finding.because(before_at(sheet), format!("{} before", line(&lines.before)));
    if !limit.assumed {
        finding.because(limit.place, "what may be lost or gained");
    }
    finding.help("loosen, peak again, tighten in turns and in stages, and read again");
}
