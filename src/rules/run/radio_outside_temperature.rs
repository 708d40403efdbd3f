//! The radio is not made for the climate.

use crate::rules::prelude::*;

rule! {
    /// The radio is not made for the climate.
    ///
    /// The hottest and the coldest air of the network against the window of the radio. Without `coldest_air` only heat is
    /// judged. Sun on the case comes on top: `limits.sun_on_radio` says how much. Without it a window that ends where the
    /// hottest air does is too small, for it leaves nothing; 0 K says that the maker's window counts the sun.
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
    let sun = sheet.practice.sun_on_radio.as_ref();
    let hottest = Celsius(sheet.hottest_air.value().0 + sun.map_or(0.0, |sun| sun.value().0));
    let at_the_edge = || {
        let edge = sun.is_none() && hottest >= window.max.value;
        edge.then(|| format!("{hottest}, the edge of what it bears, with nothing left for the sun"))
    };
    let outside = climate_outside(window, cold.map(Wanted::value), hottest);
    let Some(what) = outside.or_else(at_the_edge) else { return };
    let message = format!("end {}: radio `{}` sees {what}", sheet.name, radio.id);
    let finding = found.report(&RULE, at!(end.radio), message, "not made for this climate");
    measured_air(finding, window, cold.map(Wanted::value), hottest);
    finding.because(at!(radio.temperature), "what it bears");
    air_labels(sheet, window, finding);
    if let Some(sun) = sun {
        finding.because(sun.place, "what the sun adds");
    }
    // Without what the sun adds, a kelvin more than the air is the least that does.
    let hottest = if sun.is_some() { hottest } else { Celsius(sheet.hottest_air.value().0 + 1.0) };
    let hottest = hottest.rounded_up();
    let range = cold.map_or_else(|| hottest.to_string(), |cold| format!("{} to {hottest}", cold.given));
    let counted = "or `limits.sun_on_radio: 0 K` if its maker's window counts the sun";
    finding.help(format!("a radio for {range} or more; {counted}"));
}
