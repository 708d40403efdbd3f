//! A power line is so near that something could fall onto it.

use crate::rules::prelude::*;
use crate::sheet::LineNear;

rule! {
    /// A power line is so near that something could fall onto it.
    ///
    /// A pole with its dish, or a part of it, that falls reaches as far as it stands free. Beyond that the distance is kept
    /// that the rule named under `codes.power_lines` sets for the voltage of the line, or `limits.power_line` if that is
    /// more. A line without `voltage` takes the distance for an unknown one: ask its owner.
    ///
    /// | rule | distance up to a voltage | unknown |
    /// | --- | --- | --- |
    /// | 29 CFR 1926.1408 table A | 10 ft 50 kV, 15 ft 200 kV, 20 ft 350 kV, 25 ft 500 kV, 35 ft 750 kV, 45 ft 1000 kV | 50 ft |
    /// | DGUV 203-060 table 5 | 1 m 1 kV, 3 m 110 kV, 4 m 220 kV, 5 m 380 kV | 5 m |
    /// | SA regulation 64 | 3 m 33 kV, 4 m 66 kV, 5 m 132 kV, 6 m 275 kV | 6 m |
    ///
    /// Stop and ask the owner of the line before anything is raised: only they can switch it off or shield it. What they
    /// agreed to goes under `consent` with its reference, date and name; then this is advice. Only lines are judged that the
    /// site lists; what is not listed is not assessed.
    ///
    /// Source: 29 CFR 1926.1408 and 1926.1409, DGUV Information 203-060, South Australia regulation 64 (second-hand); that
    /// what falls reaches as far as it stands free is common practice. Local rules may ask for more.
    severity: Error,
    never_waived: PROTECTS_PEOPLE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    for near in &sheet.lines_near {
        one(sheet, near, found);
    }
}

fn one(sheet: &EndSheet<'_>, near: &LineNear, found: &mut Findings) {
    let (site, support, i) = (sheet.resolved.site, sheet.resolved.support, near.number);
    let line = &site.power_lines[i];
    let (has, needs, by) = apart(line.distance.value, near.reach);
    let message = format!("end {}: {} is {has} away, {by} less than the {needs} to keep", sheet.name, line.title);
    let finding = found.report(&RULE, at!(site.power_lines[i].distance), message, "could be reached by what falls");
    finding.measured(line.distance.value, Worse::Lower);
    let keep = near.keep;
    finding.because(at!(support.free_length), format!("what falls reaches {}, and {keep} are kept beyond", near.falls));
    let voltage = line.voltage.as_ref().map_or_else(|| "a line of unknown voltage".into(), |volts| format!("{volts}"));
    match near.rule {
        Ok(rule) => finding.because(at!(site.power_lines[i].voltage), format!("{rule}: {keep} for {voltage}")),
        Err(place) => finding.because(place, format!("{keep} at least")),
    };
    if let Some(consent) = &line.consent {
        let said = format!("{}, {}, by {}", consent.reference, consent.date, consent.name);
        finding.because(at!(site.power_lines[i].consent), format!("the owner agreed: {said}"));
        finding.help("keep to what the owner agreed to, and have it with the crew");
        finding.at_most(Severity::Advice);
    } else {
        finding.help(
            "stop: ask the owner of the line to switch it off or shield it before anything is raised, and write \
             what they agree to under `consent`: reference, date, name",
        );
    }
}
