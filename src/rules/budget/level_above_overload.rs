//! The received level is above what the receiver takes without errors.

use crate::rules::prelude::*;

rule! {
    /// The received level is above what the receiver takes without errors.
    ///
    /// It happens on short hops with large antennas. An overloaded receiver loses data in the best weather and may be
    /// damaged. Lower the power, or take smaller antennas. What power and gains may be off is counted: the level is the
    /// greatest that the stated tolerances allow.
    ///
    /// Source: the overload level and the tolerances on the data sheets.
    severity: Error,
    waivable: EQUIPMENT,
    check: Direction(check),
}

fn check(_: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let Some(level) = direction.lines.level.get() else { return };
    let (radio, end) = (direction.receiver.radio, direction.sender.end);
    let overload = radio.overload.value;
    let (sender, dish, far_dish) = (direction.sender.radio, direction.sender.antenna, direction.receiver.antenna);
    let tolerances = [
        (&sender.transmit_tolerance, at!(sender.transmit_tolerance), "its power"),
        (&dish.gain_tolerance, at!(dish.gain_tolerance), "gain of its antenna"),
        (&far_dish.gain_tolerance, at!(far_dish.gain_tolerance), "gain of the antenna that receives"),
    ];
    let off = tolerances.iter().filter_map(|(given, _, _)| given.as_ref());
    let off = off.fold(Decibels(0.0), |sum, given| sum + given.value);
    let most = level + off;
    if most.tidy() <= overload {
        return;
    }
    let (has, limit, over) = apart(most, overload);
    let may = if off.0 > 0.0 { format!("{level} and may be {has}") } else { has.clone() };
    let message = format!("{}: received level is {may}, {over} above the overload level of {limit}", direction.way);
    let finding = found.report(&RULE, at!(end.transmit_power), message, format!("gives {has} at the far end"));
    finding.measured(most, Worse::Higher);
    finding.because(at!(radio.overload), "the far receiver takes no more than this");
    for (given, place, words) in tolerances {
        if let Some(given) = given {
            finding.because(place, format!("± {given}: {words}"));
        }
    }
    finding.help(format!("set {} or less", (end.transmit_power.value - (most - overload)).rounded_down()));
}
