//! The radio has no grounding conductor.

use crate::rules::prelude::*;

rule! {
    /// The radio has no grounding conductor.
    ///
    /// Every outdoor radio is bonded to earth at its ground terminal, first thing on and last thing off. Grounding is the
    /// work of a licensed or competent person under the local code, which this program does not replace.
    ///
    /// Source: the radio's data sheet, and the code in force.
    severity: Error,
    never_waived: PROTECTS_PEOPLE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, radio) = (sheet.resolved.end, sheet.resolved.radio);
    if end.grounding.conductor.is_some() {
        return;
    }
    let message = format!("end {}: no grounding conductor is given for radio `{}`", sheet.name, radio.id);
    let finding = found.report(&RULE, at!(end.grounding.conductor), message, "no conductor here");
    finding.because(at!(radio.ground.least_conductor), "the radio asks for at least this");
    if let Some(code) = sheet.code {
        let asks = code.least.map_or("a size of its own", |(written, _)| written);
        finding.because(code.place, format!("{} asks for {asks}", code.name));
    }
    finding
        .help(format!("add `grounding: {{ conductor: {} }}` with its length and `bonds_to`", sheet.ground_written()));
}
