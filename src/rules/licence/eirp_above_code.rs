//! The radiated power is above what a code of practice allows.

use super::{mend, soften};
use crate::rules::prelude::*;

rule! {
    /// The radiated power is above what a code of practice allows.
    ///
    /// The radiated power (EIRP) is the transmit power, less the `losses` on its way to the antenna, and the gain of the sending
    /// antenna at its frequency together. Each code named under
    /// `codes.licence` of the network, or under `licence` of the hop, is compared for itself where its band holds the
    /// channel. The transmit power is taken for the mean; of the peak only the limit is shown, for nothing in the files
    /// states the peak.
    ///
    /// An error where the limit was seen in a public copy of the code, a warning where it is second-hand or from memory.
    /// National rules differ and change: check with the national regulator.
    ///
    /// Source: the code that is named; `sheet --sources` cites it with its confidence.
    severity: Error,
    never_waived: IS_LAW,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let (end, antenna) = (direction.sender.end, direction.sender.antenna);
    let licence = &hop.licence[direction.way];
    let Some(eirp) = licence.lines.eirp.get() else { return };
    for code in &licence.codes {
        let (Some(limit), Some(most)) = (code.lines.eirp_limit.get(), code.lines.power_limit.get()) else { continue };
        if eirp <= limit {
            continue;
        }
        let (has, allowed, over) = apart(eirp, limit);
        let message = format!(
            "{}: EIRP is {has}, {over} above the {allowed} of {} ({})",
            direction.way,
            code.name,
            code.eirp_known.word()
        );
        let finding = found.report(&RULE, at!(end.transmit_power), message, format!("radiates {has}"));
        finding.measured(eirp, Worse::Higher).about(code.name);
        finding.because(super::gain_at(antenna), "with this gain");
        if end.feeder.is_some() {
            finding.because(at!(end.feeder), "less what is lost in it");
        }
        if !end.losses.is_empty() {
            finding.because(at!(end.losses), "less what is lost on the way to it");
        }
        finding.because(code.place, format!("allows {allowed}"));
        finding.help(mend(direction, code, most));
        soften(finding, code.eirp_known);
    }
}
