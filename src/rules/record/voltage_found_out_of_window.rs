//! The voltage found at a radio is not one it works on.

use crate::rules::prelude::*;

rule! {
    /// The voltage found at a radio is not one it works on.
    ///
    /// Below its least input a radio restarts when its heater or its transmitter comes on; above its greatest it may be
    /// damaged.
    ///
    /// Source: the input range on the radio's data sheet.
    severity: Error,
    never_waived: SHOCKS,
    check: Record(check),
}

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (record, radio) = (sheet.document, hop.ends[sheet.end].resolved.radio);
    let takes = &radio.power.voltage;
    for run in &sheet.runs {
        let (i, Ok(voltage)) = (run.number, run.lines.voltage.value()) else { continue };
        if takes.holds(voltage.value) {
            continue;
        }
        let (limit, word) =
            if voltage.value < takes.min.value { (takes.min.value, "below") } else { (takes.max.value, "above") };
        let (has, limit, by) = apart(voltage.value, limit);
        let (end, port) = (sheet.end, &record.runs[i].port);
        let message = format!("end {end}: {has} at port {port} is {by} {word} the {limit} the radio takes");
        let finding = found.report(&RULE, at!(record.runs[i].voltage), message, "found with the radio running");
        let low = voltage.value < takes.min.value;
        finding.measured(voltage.value, if low { Worse::Lower } else { Worse::Higher });
        finding.because(at!(radio.power.voltage), format!("works on {takes}"));
        let tenth = Volts(voltage.value.0 / 10.0);
        finding.help(match run.lines.predicted.get() {
            _ if takes.holds(tenth) => {
                format!("was `{tenth}` meant? Else check supply, cable, plugs and arresters of this run")
            }
            Some(predicted) => {
                format!("{predicted} was predicted: check supply, cable, plugs and arresters of this run")
            }
            None => "check supply, cable, plugs and arresters of this run".into(),
        });
    }
}
