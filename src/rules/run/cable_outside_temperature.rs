//! A cable is not made for the climate.

use crate::rules::prelude::*;

rule! {
    /// A cable is not made for the climate.
    ///
    /// Outdoors it gets hotter than the air, by `limits.sun_on_jacket` of the network, 20 K unless it says otherwise.
    /// Beyond its window a jacket goes soft or cracks.
    ///
    /// Source: the temperatures on the cable's data sheet; sun on a black jacket is common practice, no source.
    severity: Warning,
    waivable: EQUIPMENT,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, cable) = (run.resolved.run, run.resolved.cable);
    let (Some(window), Some(hot)) = (&cable.temperature, run.lines.cable_temperature.get()) else { return };
    if spec.outdoor.value.0 <= 0.0 {
        return;
    }
    let cold = sheet.practice.coldest_air.as_ref();
    let Some(what) = climate_outside(window, cold.map(Wanted::value), hot) else { return };
    let message = format!("end {}: cable `{}` gets to {what}", sheet.name, cable.id);
    let finding = found.report(&RULE, at!(spec.cable), message, "not made for this climate");
    measured_air(finding, window, cold.map(Wanted::value), hot);
    finding.because(at!(cable.temperature), "what it bears");
    let too_cold = cold.filter(|cold| cold.value() < window.min.value);
    threshold(finding, too_cold.unwrap_or(&sheet.hottest_air), "the air it is in".into());
    if too_cold.is_none() {
        let sun = &sheet.practice.sun_on_jacket;
        threshold(finding, sun, format!("and {} of sun", sun.given));
    }
    let least = cold.map_or_else(String::new, |cold| format!("{} to ", cold.given));
    finding.help(format!("a cable for {least}{}", hot.rounded_up()));
}
