//! The radio is not made for the climate.

use crate::rules::prelude::*;

rule! {
    /// The radio is not made for the climate.
    ///
    /// The hottest and the coldest air of the network against the window of the radio. Without `coldest_air` only heat is
    /// judged. Sun on the case comes on top: ask the maker whether its window counts it.
    ///
    /// Source: the temperatures on the radio's data sheet.
    severity: Error,
    waivable: EQUIPMENT,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, radio) = (sheet.resolved.end, sheet.resolved.radio);
    let cold = sheet.practice.coldest_air.as_ref();
    let Some(window) = &radio.temperature else { return };
    let Some(what) = climate_outside(window, cold.map(Wanted::value), sheet.hottest_air.value()) else { return };
    let message = format!("end {}: radio `{}` sees {what}", sheet.name, radio.id);
    let finding = found.report(&RULE, at!(end.radio), message, "not made for this climate");
    measured_air(finding, window, cold.map(Wanted::value), sheet.hottest_air.value());
    finding.because(at!(radio.temperature), "what it bears");
    air_labels(sheet, window, finding);
    finding.help(format!("a radio for {}", climate_words(sheet)));
}
