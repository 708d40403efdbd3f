//! The fine azimuth screw does not reach past the side lobes.

use crate::rules::prelude::*;

rule! {
    /// The fine azimuth screw does not reach past the side lobes.
    ///
    /// To know the beam from a side lobe a crew must see three peaks, so it sweeps twice the angle of the first side lobe to
    /// each side. With a screw that covers less, the clamp must be turned to sweep, by hand and with nothing to hold it.
    /// Take a bracket with more travel, or plan for it.
    ///
    /// Source: side lobes of a round aperture or the measured pattern; that twice the angle is enough is common practice.
    severity: Advice,
    waivable: WORK,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, bracket, dish) = (sheet.resolved.end, sheet.resolved.bracket, sheet.resolved.antenna);
    let (Some(fine), Some(sweep)) = (&bracket.fine_azimuth, sheet.dish.lobes.sweep.get()) else { return };
    if fine.value >= sweep {
        return;
    }
    let (has, needs, by) = apart(fine.value, sweep);
    let message =
        format!("end {}: the fine azimuth covers {has} each way, {by} less than the {needs} to sweep", sheet.name);
    let finding = found.report(&RULE, at!(end.bracket.model), message, format!("its screw covers {has} each way"));
    finding.measured(fine.value, Worse::Lower);
    finding.because(at!(bracket.fine_azimuth), "the travel of the screw");
    finding.because(at!(dish.gain), "an antenna of this size");
    finding.help("sweep by the clamp and lock it before the screw is used, or take a bracket with more travel");
}
