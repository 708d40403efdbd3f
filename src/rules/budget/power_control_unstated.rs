//! A level is to be held by power control of which the radio says too little.

use crate::rules::prelude::*;
use crate::sheet::{Cause, Reason};

rule! {
    /// A level is to be held by power control of which the radio says too little.
    ///
    /// With `held_level` at an end its radio has to say that it has automatic power control, and by how much it can lower its power
    /// (`power_control_range`). Without that the level in service is taken as that of full power.
    ///
    /// Source: the data sheet of the radio.
    severity: Warning,
    never_off: NOT_JUDGED,
    check: Direction(check),
}

fn check(_: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let (end, radio) = (direction.sender.end, direction.sender.radio);
    let Some(held) = &end.held_level else { return };
    let Err(missing) = direction.levels.lowered.value() else { return };
    let (why, place, advice) = match (&missing.reason, missing.cause) {
        (Reason::NoPowerControl, Cause::Judged) => (
            format!("radio `{}` has no power control", radio.id),
            at!(radio.automatic_power_control),
            "leave `held_level` out, or take a radio that has it",
        ),
        (Reason::NoControlRange, Cause::Judged) => (
            format!("radio `{}` does not say by how much", radio.id),
            at!(radio.id),
            "add `power_control_range` to the radio, by its data sheet",
        ),
        _ => return,
    };
    let message = format!("{}: the power is to be lowered to hold {held}, and {why}", direction.way);
    let finding = found.report(&RULE, at!(end.held_level), message, "held at the far receiver");
    finding.because(place, "the radio that sends");
    finding.help(advice);
}
