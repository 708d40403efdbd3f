//! An antenna has a gain that is odd for its size.

use crate::rules::prelude::*;
use crate::sheet::USUAL_EFFICIENCY;

rule! {
    /// An antenna has a gain that is odd for its size.
    ///
    /// Of what falls on a dish, some 50 to 65 % reach the radio. Below 30 % or above 70 % it is more likely that gain,
    /// diameter or band is from another row of the data sheet. A diameter with the rim or the cover counted in does it too.
    ///
    /// Source: common practice, no source; the efficiency is 10^(G/10) / (π D / λ)², taken at mid-band.
    severity: Warning,
    waivable: DATA,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let Some(efficiency) = sheet.dish.antenna.efficiency.get() else { return };
    if USUAL_EFFICIENCY.contains(&efficiency.0) || efficiency.0 > 1.0 {
        return;
    }
    let (Ok(gain), dish) = (sheet.dish.gain.value(), sheet.resolved.antenna) else { return };
    let message = format!("antenna `{}`: the gain of {} is odd for its size", dish.id, gain);
    let label =
        format!("efficiency {efficiency}, usual are {:.1} to {:.1}", USUAL_EFFICIENCY.start(), USUAL_EFFICIENCY.end());
    let finding = found.report(&RULE, at!(dish.gain), message, label);
    let low = efficiency.0 < *USUAL_EFFICIENCY.start();
    finding.measured(gain.value, if low { Worse::Lower } else { Worse::Higher });
    finding.because(at!(dish.diameter), "the diameter");
    finding.because(at!(dish.band), "at the middle of this band");
    finding.help("check gain, diameter and band on the data sheet");
}
