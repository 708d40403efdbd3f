//! The grounding conductor found is thinner than it must be.

use crate::rules::prelude::*;

rule! {
    /// The grounding conductor found is thinner than it must be.
    ///
    /// Judged as in the design: by the floor of the radio's maker and the code in force, the greater of the two. A licensed
    /// person decides on grounding; this only compares areas.
    ///
    /// Source: `codes.grounding` of the network (IEC 60728-11 or NEC 810.21) and the radio's data sheet.
    severity: Error,
    never_waived: PROTECTS_PEOPLE,
    check: Record(check),
}

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (record, end) = (sheet.document, &hop.ends[sheet.end]);
    let (Some(conductor), Some(needed)) = (&record.grounding.conductor, sheet.lines.ground_needed.get()) else {
        return;
    };
    if sheet.ground_holds() != Some(false) {
        return;
    }
    let (has, least, by) = apart(conductor.value, needed);
    let message = format!("end {}: a conductor of {has} was found, {by} less than the {least} needed", sheet.end);
    let finding = found.report(&RULE, at!(record.grounding.conductor), message, "as found");
    finding.measured(conductor.value, Worse::Lower);
    let radio = end.resolved.radio;
    match end.code {
        Some(code) if code.least.is_some_and(|(_, least)| least >= needed) => {
            finding.because(code.place, format!("{} asks for it", code.name))
        }
        _ => finding.because(at!(radio.ground.least_conductor), "the maker asks for it"),
    };
    finding.help(format!("fit {} or more", end.ground_written()));
}
