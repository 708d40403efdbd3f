//! The transmit power is above what the licence of the hop allows.

use super::{ASK, lower};
use crate::rules::prelude::*;

rule! {
    /// The transmit power is above what the licence of the hop allows.
    ///
    /// The licence rules, whatever a code would allow. The transmit power is that at the antenna port, taken for the mean.
    ///
    /// Source: the licence, as `licence.max_power` of the hop states it.
    severity: Error,
    never_waived: IS_LAW,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let (end, spec) = (direction.sender.end, hop.resolved.hop);
    let (power, lines) = (end.transmit_power.value, &hop.licence[direction.way].lines);
    let (Ok(limit), Some(most)) = (lines.licensed_power.value(), lines.highest_power.get()) else { return };
    if power <= limit.value {
        return;
    }
    let (has, allowed, over) = apart(power, limit.value);
    let message = format!("{}: transmit power is {has}, {over} above the {allowed} of the licence", direction.way);
    let finding = found.report(&RULE, at!(end.transmit_power), message, "this much at the antenna port");
    finding.measured(power, Worse::Higher);
    finding.because(at!(spec.licence.max_power), "the licence allows this");
    finding.help(format!("{}; {ASK} before asking for more", lower(direction, most)));
}
