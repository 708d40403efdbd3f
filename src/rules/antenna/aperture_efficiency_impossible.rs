//! An antenna is said to gather more than falls on it.

use crate::rules::prelude::*;

rule! {
    /// An antenna is said to gather more than falls on it.
    ///
    /// A dish of a given diameter can have so much gain and no more: that of an aperture lit evenly, of efficiency one.
    /// Above it the gain, the diameter or the band is wrong.
    ///
    /// Source: definition of aperture efficiency, 10^(G/10) / (π D / λ)², taken at mid-band.
    severity: Error,
    waivable: DATA,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let lines = &sheet.dish.antenna;
    let (Some(efficiency), Some(most)) = (lines.efficiency.get(), lines.most_gain.get()) else { return };
    if efficiency.0 <= 1.0 {
        return;
    }
    let (Ok(gain), dish) = (sheet.dish.gain.value(), sheet.resolved.antenna) else { return };
    let (has, limit, by) = apart(gain.value, most);
    let message = format!("antenna `{}`: no dish of this size has {has}: {by} above {limit}", dish.id);
    let finding = found.report(&RULE, at!(dish.gain), message, format!("efficiency {efficiency}"));
    finding.measured(gain.value, Worse::Higher);
    finding.because(at!(dish.diameter), "the diameter");
    finding.because(at!(dish.band), "at the middle of this band");
    finding.help("check gain, diameter and band on the data sheet: 0.5 to 0.65 is usual");
}
