//! The acceptance window is narrower than the uncertainty of the prediction.

use crate::rules::prelude::*;

rule! {
    /// The acceptance window is narrower than the uncertainty of the prediction.
    ///
    /// Power, gains and read-out each have a tolerance, and so the level that a sound hop shows may lie that far from the
    /// predicted one. With a tighter window good work is sent back. Only tolerances that are stated are counted
    /// (`transmit_tolerance` of the far radio, `gain_tolerance` of both antennas, that of `readout`, or of `shown_level` where
    /// there is no voltage), so the true uncertainty is greater rather than less.
    ///
    /// Widen `objectives.acceptance_window`, or measure with something better than the read-out.
    ///
    /// Source: JCGM 100:2008 (GUM): limits as rectangular distributions, root sum of squares, coverage factor 2 for some
    /// 95 % (clauses from memory).
    severity: Warning,
    waivable: WORK,
    check: End(check),
}

fn check(hop: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let Some(uncertainty) = sheet.lines.level_uncertainty.get() else { return };
    let window = &hop.target.acceptance_window;
    if window.value() >= uncertainty {
        return;
    }
    let (has, sure, by) = apart(window.value(), uncertainty);
    let message = format!(
        "end {}: a window of ± {has} is {by} narrower than the uncertainty of the predicted level, ± {sure}",
        sheet.name
    );
    let finding = found.report(&RULE, window.place, message, "the acceptance window");
    let end = sheet.resolved.end;
    finding.measured(window.value(), Worse::Lower).known_at(at!(end.radio));
    finding.because(at!(end.radio), format!("here {} is predicted", line(&sheet.lines.target_level)));
    let (radio, sender) = (sheet.resolved.radio, sheet.far.radio);
    let (antenna, far_antenna) = (sheet.resolved.antenna, sheet.far.antenna);
    let tolerances = [
        (&sender.transmit_tolerance, at!(sender.transmit_tolerance), "power of the far end"),
        (&far_antenna.gain_tolerance, at!(far_antenna.gain_tolerance), "gain of its antenna"),
        (&antenna.gain_tolerance, at!(antenna.gain_tolerance), "gain of the antenna here"),
    ];
    let read = sheet.resolved.readout().map(|readout| (&readout.spec.tolerance, at!(readout.tolerance)));
    let shown = || {
        let shown = radio.shown_level.as_ref().map(|shown| radio.part(&"shown_level", &[], shown));
        shown.map(|shown| (&shown.spec.tolerance, at!(shown.tolerance)))
    };
    let read = read.or_else(shown).map(|(given, place)| (given, place, "the reading"));
    for (given, place, words) in tolerances.into_iter().chain(read) {
        if let Some(given) = given {
            finding.because(place, format!("± {given}: {words}"));
        }
    }
    finding.help(format!("set `objectives.acceptance_window` to {} or more", uncertainty.rounded_up()));
}
