//! A passive supply feeds other contacts than the radio takes, or the wrong way round.

use crate::rules::prelude::*;
use crate::spec::Standard;

rule! {
    /// A passive supply feeds other contacts than the radio takes, or the wrong way round.
    ///
    /// There is no handshake: power on the wrong contacts does not arrive, and reversed it may destroy the port. Passive
    /// supplies follow no standard, so both sheets must say which contacts are positive, and of a two-pole feed which pole is
    /// earthed: an input whose negative is joined to its case shorts a plant whose positive is earthed.
    ///
    /// Source: `wiring` on the sheets of supply and radio.
    severity: Error,
    never_waived: SHOCKS,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(supply) = run.resolved.supply.filter(|_| run.carries(Carried::Power)) else { return };
    let (spec, radio) = (run.resolved.run, sheet.resolved.radio);
    let Some(wiring) = supply.wiring.filter(|_| supply.standard == Standard::Passive) else { return };
    let takes = &radio.power.wiring;
    // A two-pole feed that does not say more is said to be unstated.
    if takes.is_empty() || takes.iter().any(|takes| takes.may_take(wiring)) {
        return;
    }
    let reversed = radio.power.wiring.contains(&wiring.reversed());
    let what = if reversed { "is poled the wrong way round" } else { "feeds contacts that it does not take" };
    let message = format!("end {}: for radio `{}`, supply `{}` {what}", sheet.name, radio.id, supply.id);
    let finding = found.report(&RULE, at!(spec.supply), message, wiring.word());
    finding.because(at!(supply.wiring), "what the supply feeds");
    finding.because(at!(radio.power.wiring), "what the radio takes");
    let takes: Vec<&str> = radio.power.wiring.iter().map(|wiring| wiring.word()).collect();
    finding.help(format!("a supply wired {}", takes.join(" or ")));
}
