//! Nobody says which contacts a passive supply feeds, or which the radio takes.

use crate::rules::prelude::*;
use crate::spec::{Standard, Wiring};

rule! {
    /// Nobody says which contacts a passive supply feeds, or which the radio takes.
    ///
    /// Passive supplies follow no standard. Unless both sheets say which contacts are positive, nobody can tell before the
    /// radio is on the mast, or destroyed.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(supply) = run.resolved.supply.filter(|_| run.carries(Carried::Power)) else { return };
    let (spec, radio) = (run.resolved.run, sheet.resolved.radio);
    // A radio that takes no passive supply is the business of another rule.
    if supply.standard != Standard::Passive || !radio.power.accepts.contains(&Standard::Passive) {
        return;
    }
    let (who, place) = match (supply.wiring, radio.power.wiring.is_empty()) {
        (None, _) => (format!("passive supply `{}` feeds", supply.id), at!(supply.wiring)),
        (Some(_), true) => (format!("radio `{}` takes of a passive supply", radio.id), at!(radio.power.wiring)),
        (Some(Wiring::TwoPole), false) if !radio.power.wiring.contains(&Wiring::TwoPole) => {
            return poles(sheet, run, found);
        }
        (Some(_), false) => return,
    };
    let message = format!("end {}: which contacts {who} is not said", sheet.name);
    let finding = found.report(&RULE, place, message, "no `wiring` here");
    finding.known_at(at!(spec.supply)).because(at!(spec.supply), "used here");
    finding.help(if supply.wiring.is_none() {
        "add `wiring:` from its sheet, such as `wiring: 45-plus-78-minus`"
    } else {
        "add `wiring:` from its sheet, such as `wiring: [45-plus-78-minus]`, every one that will do"
    });
}

/// The radio minds which pole is earthed, and the supply does not say.
fn poles(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, radio) = (run.resolved.run, sheet.resolved.radio);
    let Some(supply) = run.resolved.supply else { return };
    if !radio.power.wiring.iter().any(|takes| takes.may_take(Wiring::TwoPole)) {
        return;
    }
    let message =
        format!("end {}: which pole supply `{}` earths is not said, and the radio minds", sheet.name, supply.id);
    let finding = found.report(&RULE, at!(supply.wiring), message, "either pole");
    finding.because(at!(radio.power.wiring), "what the radio takes");
    finding.because(at!(spec.supply), "used here");
    let takes: Vec<&str> = radio.power.wiring.iter().map(|wiring| wiring.word()).collect();
    finding.help(format!("say which: the radio takes {}", takes.join(" or ")));
}
