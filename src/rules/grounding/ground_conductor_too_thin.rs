//! The grounding conductor is thinner than the radio or the code in force asks for.

use crate::rules::prelude::*;

rule! {
    /// The grounding conductor is thinner than the radio or the code in force asks for.
    ///
    /// Areas are compared, not gauge numbers: a smaller gauge number is a thicker wire. Grounding is the work of a licensed
    /// or competent person under the local code, which this program does not replace.
    ///
    /// A metal other than copper is thicker for the same: the radio's floor is taken at equal conductance, the code has a
    /// size for each metal.
    ///
    /// Source: the radio's data sheet; IEC 60728-11 (able to carry lightning: 16 mm² copper, 25 mm² insulated aluminium, 50 mm²
    /// steel)
    /// or NEC 810.21 (10 AWG copper, 17 AWG copper-clad steel; 8 AWG aluminium from memory), as quoted second-hand: check
    /// the edition adopted where you build. Gauges by ASTM B258.
    severity: Error,
    never_waived: PROTECTS_PEOPLE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, radio) = (sheet.resolved.end, sheet.resolved.radio);
    let (Some(conductor), Some(needed)) = (&end.grounding.conductor, sheet.ground.needed.get()) else { return };
    if conductor.value >= needed {
        return;
    }
    let (has, wants, less) = apart(conductor.value, needed);
    let message = format!("end {}: grounding conductor of {has}, {less} less than the {wants} required", sheet.name);
    let finding = found.report(
        &RULE,
        at!(end.grounding.conductor),
        message,
        format!("{has} of {}", end.grounding.material.words()),
    );
    finding.measured(conductor.value, Worse::Lower);
    let metal = end.grounding.material.words();
    match sheet.code.and_then(|code| Some((code, code.least.filter(|(_, least)| *least >= needed)?.0))) {
        Some((code, written)) => finding.because(code.place, format!("{} asks for {written} of {metal}", code.name)),
        None => finding.because(at!(radio.ground.least_conductor), "the radio asks for this"),
    };
    let taken = sheet.ground_written();
    finding.help(format!("take {taken} or thicker"));
    let because = "another conductor has to be bought and pulled, and whoever is licensed for it decides";
    finding.fix_unsafely(vec![(at!(end.grounding.conductor).into(), taken)], because);
}
