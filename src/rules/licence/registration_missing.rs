//! A hop that must be registered has no registration number.

use super::ASK;
use crate::rules::prelude::*;

rule! {
    /// A hop that must be registered has no registration number.
    ///
    /// In the United States a licence for 71 to 76 and 81 to 86 GHz covers the country, but each link is coordinated and
    /// registered before it transmits. Write the number under `licence` of the hop; the packs print it.
    ///
    /// Source: 47 CFR 101.1501 and following, published.
    severity: Error,
    never_waived: IS_LAW,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let spec = hop.resolved.hop;
    let mut codes = hop.licence.iter().filter(|licence| licence.lines.number.value().is_err());
    let Some(code) = codes.find_map(|licence| licence.codes.iter().find(|code| code.registered)) else { return };
    let message = format!("{} asks for a registration of each link, and none is stated", code.name);
    let finding = found.report(&RULE, at!(spec.licence.number), message, "no `number` under `licence`");
    finding.because(code.place, "falls under this");
    finding.help(format!("register the link, then add `number:` under `licence` of the hop; {ASK}"));
}
