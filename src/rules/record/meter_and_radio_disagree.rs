//! The meter and the radio give two levels.

use super::{measured_at, read_at};
use crate::rules::prelude::*;

rule! {
    /// The meter and the radio give two levels.
    ///
    /// Both were written down after locking, and the read-out scale turns the volts into another level than the radio said.
    /// One of the two was misread, or the scale in the spec is not that of this radio. As far as `readout.tolerance` they
    /// may differ, 1 dB where none is stated.
    ///
    /// Source: the read-out tolerance of the radio's data sheet; 1 dB is common practice.
    severity: Warning,
    waivable: EVIDENCE,
    check: Record(check),
}

/// What may lie between them where the radio states no tolerance.
const APART: Decibels = Decibels(1.0);

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let record = sheet.document;
    let Some(readout) = hop.ends[sheet.end].resolved.readout() else { return };
    let (Some(gap), Some(level)) = (sheet.lines.scale_gap.get(), &record.after_locking.level) else { return };
    let may = readout.spec.tolerance.as_ref().map_or(APART, |given| given.value);
    let gap = Decibels(gap.0.abs());
    // Read to the millivolt and the tenth: the last digit decides nothing.
    if gap.tidy() <= may {
        return;
    }
    let (has, may, by) = apart(gap, may);
    let (end, meter) = (sheet.end, line(&sheet.lines.measured));
    let message = format!("end {end}: the meter says {meter} and the radio {level}, {has} apart, {by} more than {may}");
    let finding = found.report(&RULE, measured_at(sheet), message, format!("{meter} by the read-out scale"));
    finding.measured(gap, Worse::Higher).known_at(read_at(sheet));
    finding.because(at!(record.after_locking.level), "what the radio said");
    finding.because(at!(readout.low), "the scale");
    finding.help("read both again at the same moment; if they still differ, check the two points of the scale");
}
