//! A receiver is said to need more than its modulation does.

use crate::rules::prelude::*;
use crate::units::Dbm;

rule! {
    /// A receiver is said to need more than its modulation does.
    ///
    /// Without any code a constellation holds at so much signal over the noise; a threshold more than 5 dB above that is
    /// more likely of another modulation or bandwidth. Margins counted from it are too small, and the hop is built larger
    /// than it need be. Judged for states that state their `bits`, in radios that state their `noise_figure`.
    ///
    /// Source: kTB at 290 K; Gray-coded constellations at one bit error in a million without coding, computed. The 5 dB are
    /// common practice, no source.
    severity: Warning,
    waivable: DATA,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let radio = sheet.resolved.radio;
    for threshold in &sheet.thresholds {
        let i = threshold.number;
        let state = &radio.states[i];
        let (Some(greatest), stated) = (threshold.lines.greatest.get(), state.threshold.value) else { continue };
        if stated <= greatest {
            continue;
        }
        let (has, limit, by) = apart(stated, greatest);
        let message = format!(
            "radio `{}`: {has} is high for {} at {}, {by} above {limit}",
            radio.id, state.title, state.bandwidth
        );
        let noise = line(&threshold.lines.noise);
        let finding = found.report(&RULE, at!(radio.states[i].threshold), message, format!("the noise is {noise}"));
        finding.measured(stated, Worse::Higher);
        finding.because(at!(radio.noise_figure), "with this noise figure");
        finding.because(at!(radio.states[i].bits), "and these bits to a symbol");
        let turned = Dbm(-stated.0);
        if threshold.lines.least.get().is_some_and(|least| turned >= least) && turned <= greatest {
            finding.help(format!("is the minus missing? {turned} is a threshold of this state"));
            finding
                .fix_unsafely(vec![(at!(radio.states[i].threshold).into(), turned.to_string())], "it changes margins");
        } else {
            finding.help("check the row of the data sheet: bandwidth, modulation and threshold belong together");
        }
    }
}
