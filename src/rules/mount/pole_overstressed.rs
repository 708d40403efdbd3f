//! The survival wind works the foot of the pole harder than is prudent.

use crate::rules::prelude::*;
use crate::units::Megapascals;

rule! {
    /// The survival wind works the foot of the pole harder than is prudent.
    ///
    /// The stress is that of bending alone, without gust or load factors, in the bare wind or in what of it acts beside the
    /// ice that the climate or the site states; two thirds of the yield strength of the
    /// commonest grade is taken as the limit. It finds poles that are plainly too thin. It proves nothing of the others:
    /// the pole, what holds it and the roof below are for a structural engineer to confirm.
    ///
    /// Everything counts that the hops of the network put on this pole: each antenna with its radio at its own height, in the
    /// pressure there. Forces are added by their size, which no direction of the wind exceeds. What no hop of the network
    /// knows of does not count. The sheet says how much of the moment is whose.
    ///
    /// Source: elastic bending of a cantilever; strengths from memory of EN 10025 and makers' tables; the factor of 1.5 is
    /// common practice, no source.
    severity: Warning,
    never_waived: FALLS,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let lines = &sheet.wind;
    let (Some(bare), Some(strength)) = (lines.survival_stress.get(), lines.strength.get()) else { return };
    let iced = sheet.ice.stress.get().filter(|iced| *iced > bare);
    let stress = iced.unwrap_or(bare);
    let allowed = Megapascals(strength.0 / 1.5);
    if stress <= allowed {
        return;
    }
    let (support, dish) = (sheet.resolved.support, sheet.resolved.antenna);
    let (has, limit, by) = apart(stress, allowed);
    let message =
        format!("end {}: {} at the foot of `{}` in the survival wind, {by} over {limit}", sheet.name, has, support.id);
    let iced_too = if iced.is_some() { ", with ice on it" } else { "" };
    let message = format!("{message}{iced_too}{}", with_others(sheet));
    let label = format!("yields at {strength}");
    let finding = found.report(&RULE, at!(support.outside_diameter), message, label);
    finding.measured(stress, Worse::Higher);
    finding.because(at!(support.free_length), "the lever the wind has");
    finding.because(at!(dish.wind_area), format!("in {}", line(&lines.survival_pressure)));
    if let Some(ice) = sheet.ice.thickness.first_source().filter(|_| iced.is_some()) {
        finding.because(ice, "ice makes it wider");
    }
    push_others(sheet, finding);
    finding.help("take a thicker or shorter pole or stay it, and have a structural engineer confirm it");
}
