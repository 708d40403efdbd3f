//! A meter reading that the read-out port cannot give.

use super::{before_at, measured_at};
use crate::network::Part;
use crate::place::Place;
use crate::rules::prelude::*;
use crate::sheet::slips;
use crate::spec::Readout;

rule! {
    /// A meter reading is one that the read-out port cannot give.
    ///
    /// The port has a least and a greatest voltage, and some radios have no such port. A reading beyond them is a slip of the pen,
    /// a wrong port, a wrong range of the meter, or another radio. So is a level below the thermal noise of the channel, or above
    /// what the far end sends. No level can be read from it.
    ///
    /// Source: the read-out range on the radio's data sheet; kTB at 290 K; nothing between two antennas makes power.
    severity: Error,
    waivable: EVIDENCE,
    check: Record(check),
}

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let record = sheet.document;
    let Some(readout) = hop.ends[sheet.end].resolved.readout() else { return unread(hop, sheet, found) };
    let range = &readout.spec.range;
    let readings = [
        (&record.before_locking.meter, before_at(sheet), "before locking"),
        (&record.after_locking.meter, measured_at(sheet), "after locking"),
    ];
    for (meter, place, when) in readings {
        let Some(volts) = meter.as_ref().filter(|volts| !range.holds(volts.value)) else {
            if let Some(volts) = meter {
                no_such_level(hop, sheet, (&readout, volts.value), place, found);
            }
            continue;
        };
        let (limit, word) =
            if volts.value < range.min.value { (range.min.value, "below") } else { (range.max.value, "beyond") };
        let (has, ends, by) = apart(MeterVolts(volts.value.0), MeterVolts(limit.0));
        let end = sheet.end;
        let message = format!("end {end}: {has} {when} is {by} {word} the {ends} where the port stops");
        let finding = found.report(&RULE, place, message, format!("the port gives {range}"));
        finding.measured(volts.value, if volts.value < range.min.value { Worse::Lower } else { Worse::Higher });
        finding.because(at!(readout.range), "the range of the read-out");
        let thousandth = Volts(volts.value.0 / 1000.0);
        finding.help(if range.holds(thousandth) {
            format!("was `{} mV` meant? Else read again on port {}, direct voltage", volts.value.0, readout.port)
        } else {
            format!("read again on port {}, direct voltage, in millivolts", readout.port)
        });
    }
}

/// A reading of a meter at a radio that gives no voltage.
fn unread(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (record, radio, end) = (sheet.document, hop.ends[sheet.end].resolved.radio, sheet.end);
    let readings =
        [(&record.before_locking.meter, before_at(sheet)), (&record.after_locking.meter, measured_at(sheet))];
    for (meter, place) in readings {
        let Some(volts) = meter else { continue };
        let message = format!("end {end}: {volts} was read on a meter, and radio `{}` gives no voltage", radio.id);
        let finding = found.report(&RULE, place, message, "no level can be read from it");
        finding.because(at!(radio.id), "its sheet states no `readout`");
        finding.help("write the level that the radio shows under `level`, or state the radio's `readout`");
    }
}

/// A voltage that the port can give, and no level that can be: the scale in the spec is not that of this radio.
fn no_such_level(
    hop: &HopSheet<'_>,
    sheet: &RecordSheet<'_>,
    (readout, volts): (&Part<'_, Readout>, Volts),
    place: Place,
    found: &mut Findings,
) {
    let Some((level, [least, most])) = slips::level_of_reading(hop, sheet.end, volts) else { return };
    let end = &hop.ends[sheet.end];
    if (least..=most).contains(&level) {
        return;
    }
    let (limit, why) =
        if level < least { (least, "the noise of the channel") } else { (most, "the most that the far end can send") };
    let (has, limit, by) = apart(level, limit);
    let word = if level < least { "below" } else { "above" };
    let message = format!("end {}: the reading comes to {has}, {by} {word} {limit}, {why}", sheet.end);
    let finding = found.report(&RULE, at!(readout.low), message, "by this scale");
    finding.measured(level, if level < least { Worse::Lower } else { Worse::Higher });
    finding.because(at!(readout.high), "and this");
    finding.because(place, "as read");
    let radio = end.resolved.radio;
    finding.help(format!("check the two points of the scale of radio `{}`: volts or millivolts?", radio.id));
}
