//! The transmit power is above what a code of practice allows at the antenna port.

use super::{mend, soften};
use crate::rules::prelude::*;

rule! {
    /// The transmit power is above what a code of practice allows at the antenna port.
    ///
    /// Some codes limit the power itself besides what is radiated: as a figure, for each megahertz of the channel, or by
    /// the gain of the antenna. Compared is the power at the port of the radio, whatever is lost behind it. A code that states a peak is compared with the transmit power as set, which is taken for
    /// the mean, so it says no more than that the mean is already too much.
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
    let (end, antenna, spec) = (direction.sender.end, direction.sender.antenna, hop.resolved.hop);
    for code in &hop.licence[direction.way].codes {
        let power = end.transmit_power.value;
        let (Some(limit), Some(most)) = (code.lines.port_power_limit.get(), code.lines.power_limit.get()) else {
            continue;
        };
        if power <= limit {
            continue;
        }
        let (has, allowed, over) = apart(power, limit);
        let message = format!(
            "{}: transmit power is {has}, {over} above the {allowed} of {} ({})",
            direction.way,
            code.name,
            code.power_known.word()
        );
        let finding = found.report(&RULE, at!(end.transmit_power), message, "this much at the antenna port");
        finding.measured(power, Worse::Higher).about(code.name);
        finding.because(code.place, format!("allows {allowed} with this antenna and bandwidth"));
        finding.because(at!(antenna.gain), "this antenna");
        finding.because(at!(spec.channel.bandwidth), "this bandwidth");
        finding.help(mend(direction, code, most));
        soften(finding, code.power_known);
    }
}
