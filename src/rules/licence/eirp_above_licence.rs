//! The radiated power is above what the licence of the hop allows.

use super::{ASK, lower};
use crate::rules::prelude::*;

rule! {
    /// The radiated power is above what the licence of the hop allows.
    ///
    /// The licence rules, whatever a code would allow. The radiated power (EIRP) is the transmit power, taken for the mean, less
    /// the `losses` on its way to the antenna, and the gain of the sending antenna at its frequency together.
    ///
    /// Source: the licence, as `licence.max_eirp` of the hop states it.
    severity: Error,
    never_waived: IS_LAW,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let (end, antenna, spec) = (direction.sender.end, direction.sender.antenna, hop.resolved.hop);
    let lines = &hop.licence[direction.way].lines;
    let (Some(eirp), Ok(limit), Some(most)) =
        (lines.eirp.get(), lines.licensed_eirp.value(), lines.highest_power.get())
    else {
        return;
    };
    if eirp <= limit.value {
        return;
    }
    let (has, allowed, over) = apart(eirp, limit.value);
    let message = format!("{}: EIRP is {has}, {over} above the {allowed} of the licence", direction.way);
    let finding = found.report(&RULE, at!(end.transmit_power), message, format!("radiates {has}"));
    finding.measured(eirp, Worse::Higher);
    finding.because(at!(spec.licence.max_eirp), "the licence allows this");
    finding.because(super::gain_at(antenna), "with this gain");
    if end.feeder.is_some() {
        finding.because(at!(end.feeder), "less what is lost in it");
    }
    if !end.losses.is_empty() {
        finding.because(at!(end.losses), "less what is lost on the way to it");
    }
    finding.help(format!("{}, or a smaller antenna; {ASK} before asking for more", lower(direction, most)));
}
