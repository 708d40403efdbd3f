//! A meter reading that the read-out port cannot give.

use super::{before_at, measured_at};
use crate::rules::prelude::*;

rule! {
    /// A meter reading is one that the read-out port cannot give.
    ///
    /// The port has a least and a greatest voltage. A reading beyond them is a slip of the pen, a wrong port, a wrong range
    /// of the meter, or another radio. No level is to be had from it.
    ///
    /// Source: the read-out range on the radio's data sheet.
    severity: Error,
    waivable: EVIDENCE,
    check: Record(check),
}

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (record, radio) = (sheet.document, hop.ends[sheet.end].resolved.radio);
    let range = &radio.readout.range;
    let readings = [
        (&record.before_locking.meter, before_at(sheet), "before locking"),
        (&record.after_locking.meter, measured_at(sheet), "after locking"),
    ];
    for (meter, place, when) in readings {
        let Some(volts) = meter.as_ref().filter(|volts| !range.holds(volts.value)) else { continue };
        let (limit, word) =
            if volts.value < range.min.value { (range.min.value, "below") } else { (range.max.value, "beyond") };
        let (has, ends, by) = apart(MeterVolts(volts.value.0), MeterVolts(limit.0));
        let end = sheet.end;
        let message = format!("end {end}: {has} {when} is {by} {word} the {ends} where the port stops");
        let finding = found.report(&RULE, place, message, format!("the port gives {range}"));
        finding.measured(volts.value, if volts.value < range.min.value { Worse::Lower } else { Worse::Higher });
        finding.because(at!(radio.readout.range), "the range of the read-out");
        finding.help(format!("read again on port {}, direct voltage, in millivolts", radio.readout.port));
    }
}
