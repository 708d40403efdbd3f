//! The radio cannot run at the end of this cable at all.

use crate::rules::prelude::*;
use crate::sheet::Feed;

rule! {
    /// The radio cannot run at the end of this cable at all.
    ///
    /// A radio draws constant power: the lower its voltage, the more current it takes, and the more the cable loses. Past a
    /// certain resistance the equation `V² − V_s V + R P = 0` has no solution: the supply collapses and the radio reboots
    /// without end. What the radio passes on to other devices is part of it.
    ///
    /// Shorten the run, take thicker conductors or a supply that powers four pairs or gives more voltage.
    ///
    /// Source: Ohm's law, with the most power a line can hand over `V_s² / 4R`.
    severity: Error,
    waivable: SERVICE,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Feed::Starves(limit) = run.feed else { return };
    let (own, onward) = (sheet.resolved.radio.power.draw.value, run.lines.onward_draw.get().unwrap_or_default());
    let draw = own + onward;
    let message = if limit.most_power < draw {
        let (most, draw, short) = apart(limit.most_power, draw);
        format!("end {}: {most} is the most this cable can bring, {short} less than the {draw} drawn", sheet.name)
    } else {
        format!("end {}: the {own} of the radio and the {onward} it passes on do not settle on this cable", sheet.name)
    };
    starving(&RULE, sheet, run, message, found).measured(limit.most_power, Worse::Lower);
}
