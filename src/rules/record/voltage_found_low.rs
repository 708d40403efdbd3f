//! The voltage found at a radio is well below the predicted one.

use crate::rules::prelude::*;

rule! {
    /// The voltage found at a radio is well below the predicted one.
    ///
    /// The prediction is that of the worst case: least supply, hot cable, greatest draw. Less than that means a contact that
    /// resists, a cable that is longer, thinner or not copper, or a supply that sags, and it gets worse with time. The
    /// threshold is `limits.voltage_drop`, 1 V unless set.
    ///
    /// Source: constant-power load behind the loop of the cable; the threshold is common practice, no source.
    severity: Warning,
    waivable: EQUIPMENT,
    check: Record(check),
}

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (record, limit) = (sheet.document, &sheet.limits.voltage_drop);
    let takes = &hop.ends[sheet.end].resolved.radio.power.voltage;
    for run in &sheet.runs {
        let i = run.number;
        let (Ok(voltage), Some(predicted)) = (run.lines.voltage.value(), run.lines.predicted.get()) else { continue };
        if sheet.voltage_low(run) != Some(true) || !takes.holds(voltage.value) {
            continue;
        }
        let (has, wanted, by) = apart(voltage.value, predicted);
        let (end, port) = (sheet.end, &record.runs[i].port);
        let message = format!("end {end}: {has} at port {port} is {by} below the {wanted} predicted at worst");
        let finding = found.report(&RULE, at!(record.runs[i].voltage), message, "found with the radio running");
        finding.measured(voltage.value, Worse::Lower);
        let run_of_hop = hop.ends[sheet.end].runs[run.run].resolved.run;
        finding.because(at!(run_of_hop.cable), "predicted for this run");
        if !limit.assumed {
            finding.because(limit.place, "the shortfall that is allowed");
        }
        finding.help("look for a contact that resists, another cable than designed, or a supply that sags");
    }
}
