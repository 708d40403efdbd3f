//! The supply grants less power than the class of the radio asks for.

use crate::rules::prelude::*;
use crate::spec::Standard;

rule! {
    /// The supply grants less power than the class of the radio asks for.
    ///
    /// Source and device agree on a class when they meet. A source of a lower class gives no more than that class has, and
    /// switches off a device that takes more. A radio that states no class needs that of its draw.
    ///
    /// Source: IEEE 802.3-2022, clauses 33 and 145 (second-hand).
    severity: Error,
    waivable: SERVICE,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(supply) = run.resolved.supply.filter(|_| run.carries(Carried::Power)) else { return };
    let Some(grants) = run.classes.granted.filter(|_| supply.standard != Standard::Passive) else { return };
    let (spec, radio) = (run.resolved.run, sheet.resolved.radio);
    let asked = run.classes.asked;
    if asked.is_some_and(|asked| asked.device_power <= grants.device_power) {
        return;
    }
    let wants = asked.map_or_else(|| "more than any class".into(), |asked| format!("class {}", asked.number));
    let gives = grants.device_power;
    let message = format!(
        "end {}: class {} leaves a device {gives}, radio `{}` asks for {wants}",
        sheet.name, grants.number, radio.id
    );
    let finding = found.report(&RULE, at!(spec.supply), message, format!("of class {}", grants.number));
    finding.measured(gives, Worse::Lower);
    finding.because(at!(supply.class), "the class it grants");
    if radio.power.class.is_some() {
        finding.because(at!(radio.power.class), "the class it asks for");
    } else {
        finding.because(at!(radio.power.draw), "the most the radio draws");
    }
    finding.help(match asked {
        Some(asked) => format!("a supply of class {} or higher", asked.number),
        None => "a passive supply of enough power, or feed less through the radio".into(),
    });
}
