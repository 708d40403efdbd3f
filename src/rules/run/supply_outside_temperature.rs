//! A supply that stands outdoors is not made for the climate.

use crate::rules::prelude::*;
use crate::spec::Shelter;

rule! {
    /// A supply that stands outdoors is not made for the climate.
    ///
    /// In the weather or in a box it sees at least the hottest and the coldest air of the network; a box in the sun is
    /// hotter still. Indoors it is not judged.
    ///
    /// Source: the temperatures on the supply's data sheet.
    severity: Error,
    never_waived: SHOCKS,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (Some(supply), Some(point)) = (run.resolved.supply, run.resolved.power_point) else { return };
    let Some(window) = supply.temperature.as_ref().filter(|_| point.place != Shelter::Indoor) else { return };
    let cold = sheet.practice.coldest_air.as_ref();
    let Some(what) = climate_outside(window, cold.map(Wanted::value), sheet.hottest_air.value()) else { return };
    let spec = run.resolved.run;
    let message = format!("end {}: supply `{}` sees {what}", sheet.name, supply.id);
    let finding = found.report(&RULE, at!(spec.supply), message, "not made for this climate");
    measured_air(finding, window, cold.map(Wanted::value), sheet.hottest_air.value());
    finding.because(at!(supply.temperature), "what it bears");
    finding.because(at!(point.place), format!("power point `{}` is outdoors", point.id));
    air_labels(sheet, window, finding);
    finding.help(format!("a supply for {}, or a power point indoors", climate_words(sheet)));
}
