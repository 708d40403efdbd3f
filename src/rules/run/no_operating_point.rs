//! The radio cannot run at the end of this cable at all.

use crate::rules::prelude::*;
use crate::sheet::Feed;

rule! {
    /// The radio cannot run at the end of this cable at all.
    ///
    /// A radio draws constant power: the lower its voltage, the more current it takes, and the more the cable loses. Past a
    /// certain resistance the equation `V² − V_s V + R P = 0` has no solution: the supply collapses and the radio reboots
    /// without end.
    ///
    /// Shorten the run, take thicker conductors or a supply that powers four pairs or gives more voltage.
    ///
    /// Source: Ohm's law, with the most power a line can hand over `V_s² / 4R`.
    severity: Error,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Feed::Starves(limit) = run.feed else { return };
    let (spec, cable, radio) = (run.resolved.run, run.resolved.cable, sheet.resolved.radio);
    let (most, draw, short) = apart(limit.most_power, radio.power.draw.value);
    let message =
        format!("end {}: {most} is the most this cable can bring, {short} less than the {draw} drawn", sheet.name);
    let finding = found.report(
        &RULE,
        at!(spec.outdoor),
        message,
        format!("loop resistance {}", line(&run.lines.loop_resistance)),
    );
    finding.because(at!(spec.supply), format!("gives {}", line(&run.lines.supply_voltage)));
    finding.because(at!(radio.power.draw), "the most the radio draws");
    finding.because(at!(cable.conductor), "the conductors of the cable");
    finding.help(format!("{}, thicker conductors, or a supply of four pairs or more volts", run.shorter()));
}
