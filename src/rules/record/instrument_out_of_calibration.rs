//! The instrument was out of calibration on the day.

use crate::rules::prelude::*;
use crate::units::Days;

rule! {
    /// The instrument was out of calibration on the day of the visit.
    ///
    /// On most read-outs ten millivolts are a decibel. A reading of a meter nobody vouches for proves nothing.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    waivable: EVIDENCE,
    check: Record(check),
}

fn check(_: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let record = sheet.document;
    let (Some(due), Some(date)) = (record.instrument.calibration_due, record.date) else { return };
    if date <= due {
        return;
    }
    let message = format!("end {}: the calibration ran out on {due}, the visit was on {date}", sheet.end);
    let finding = found.report(&RULE, at!(record.instrument.calibration_due), message, "ran out on this day");
    let late = i32::try_from(date.day_number() - due.day_number()).map_or(f64::INFINITY, f64::from);
    finding.measured(Days(late), Worse::Higher);
    finding.because(at!(record.date), "day of the visit");
    finding.help("read again with a calibrated instrument, or have this one checked and note the result");
}
