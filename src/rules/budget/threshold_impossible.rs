//! A receiver is said to hold below what noise allows.

use crate::rules::prelude::*;

rule! {
    /// A receiver is said to hold below what noise allows.
    ///
    /// The noise of a receiver is that of its bandwidth and its noise figure, and a constellation of so many bits needs at
    /// least so much signal over it, whatever the code. A threshold below is that of another bandwidth or modulation, and
    /// every margin counted from it is too hopeful. Judged for states that state their `bits`, in radios that state their
    /// `noise_figure`.
    ///
    /// Source: kTB at 290 K; C. E. Shannon (1948), theorem 17, with nine tenths of the bits as payload.
    severity: Error,
    waivable: DATA,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let radio = sheet.resolved.radio;
    for threshold in &sheet.thresholds {
        let i = threshold.number;
        let state = &radio.states[i];
        let (Some(least), stated) = (threshold.lines.least.get(), state.threshold.value) else { continue };
        if stated >= least {
            continue;
        }
        let (has, limit, by) = apart(stated, least);
        let message = format!(
            "radio `{}`: {} at {} cannot hold at {has}, {by} below {limit}",
            radio.id, state.title, state.bandwidth
        );
        let noise = line(&threshold.lines.noise);
        let finding = found.report(&RULE, at!(radio.states[i].threshold), message, format!("the noise is {noise}"));
        finding.measured(stated, Worse::Lower);
        finding.because(at!(radio.noise_figure), "with this noise figure");
        finding.because(at!(radio.states[i].bits), "and these bits to a symbol");
        finding.help("check the row of the data sheet: bandwidth, modulation and threshold belong together");
    }
}
