//! The received level is above what the receiver takes without errors.

use crate::rules::prelude::*;

rule! {
    /// The received level is above what the receiver takes without errors.
    ///
    /// It happens on short hops with large antennas. An overloaded receiver loses data in the best weather and may be
    /// damaged. Lower the power, or take smaller antennas.
    ///
    /// Source: the overload level on the radio's data sheet.
    severity: Error,
    waivable: EQUIPMENT,
    check: Direction(check),
}

fn check(_: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let Some(level) = direction.lines.level.get() else { return };
    let (radio, end) = (direction.receiver.radio, direction.sender.end);
    let overload = radio.overload.value;
    if level <= overload {
        return;
    }
    let (has, limit, over) = apart(level, overload);
    let message = format!("{}: received level is {has}, {over} above the overload level of {limit}", direction.way);
    let finding = found.report(&RULE, at!(end.transmit_power), message, format!("gives {has} at the far end"));
    finding.measured(level, Worse::Higher);
    finding.because(at!(radio.overload), "the far receiver takes no more than this");
    finding.help(format!("set {} or less", (end.transmit_power.value - (level - overload)).rounded_down()));
}
