//! In an up-fade the received level is above what the receiver takes without errors.

use crate::rules::prelude::*;

rule! {
    /// In an up-fade the received level is above what the receiver takes without errors.
    ///
    /// On hops over 5 km layers of air now and then focus the beam, and the level rises above that of a clear sky by
    /// `climate.up_fade`. What power and gains may be off is counted. Automatic power control that holds a level (`held_level` of
    /// the end, `power_control_range` of its radio) lowers the level from which the fade sets out, no further than its range;
    /// that it follows the fade is not counted on. Lower the power, let the control hold a lower level, or take smaller antennas.
    ///
    /// Source: the overload level and the tolerances on the data sheets; how far a level rises is common practice, no source.
    severity: Warning,
    waivable: EQUIPMENT,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let levels = &direction.levels;
    let (Some(level), Ok(up_fade)) = (levels.up_fade_level.get(), levels.up_fade.value()) else { return };
    let (radio, end) = (direction.receiver.radio, direction.sender.end);
    let overload = radio.overload.value;
    if level.tidy() <= overload {
        return;
    }
    let (has, limit, over) = apart(level, overload);
    let way = direction.way;
    let message = format!("{way}: an up-fade of {up_fade} brings {has}, {over} above the overload level of {limit}");
    let finding = found.report(&RULE, at!(end.transmit_power), message, "sends this in a clear sky");
    finding.measured(level, Worse::Higher);
    if let Some(wanted) = &hop.target.up_fade {
        finding.because(wanted.place, "so far above a clear sky");
    }
    finding.because(at!(radio.overload), "the far receiver takes no more than this");
    if let (Some(held), Some(lowered)) = (&end.held_level, levels.lowered.get()) {
        finding.because(at!(end.held_level), format!("power control holds {held}: lowers by {lowered}"));
    }
    let less = (end.transmit_power.value - (level - overload)).rounded_down();
    finding.help(match end.held_level {
        Some(_) => format!("{over} less: a lower level to hold as far as the control reaches, or less power"),
        None => format!("set {less} or less, or let power control hold a lower level"),
    });
}
