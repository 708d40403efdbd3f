//! The sending antenna has less gain than a code of practice asks for.

use super::{ASK, soften};
use crate::rules::prelude::*;

rule! {
    /// The sending antenna has less gain than a code of practice asks for.
    ///
    /// A wide beam disturbs the neighbours. 47 CFR 101.115 takes a beam that is narrow enough in place of the gain: one of
    /// the two will do, so this speaks only when both are missed.
    ///
    /// An error where the limit was seen in a public copy of the code, a warning where it is second-hand or from memory.
    /// National rules differ and change: check with the national regulator.
    ///
    /// Source: the code that is named; `sheet --sources` cites it with its confidence.
    severity: Error,
    never_waived: IS_LAW,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let (end, antenna) = (direction.sender.end, direction.sender.antenna);
    let (Ok(gain), beam) = (direction.lines.transmit_gain.value(), antenna.beamwidth.value) else { return };
    let gain = gain.value;
    for code in &hop.licence[direction.way].codes {
        let Some(least) = code.lines.least_gain.get() else { continue };
        let widest = code.lines.greatest_beamwidth.get();
        if gain >= least || widest.is_some_and(|widest| beam <= widest) {
            continue;
        }
        let (has, asked, short) = apart(gain, least);
        let beam_too = widest.map(|widest| {
            let (has, allowed, _) = apart(beam, widest);
            (
                format!(", and its beam of {has} is wider than {allowed}"),
                format!(", or with a beam of {allowed} or less"),
            )
        });
        let (also, or) = beam_too.unwrap_or_default();
        let message = format!(
            "{}: antenna gain is {has}, {short} below the {asked} of {} ({}){also}",
            direction.way,
            code.name,
            code.antenna_known.word()
        );
        let finding = found.report(&RULE, at!(end.antenna), message, "not allowed to send with this antenna");
        finding.measured(gain, Worse::Lower).about(code.name);
        finding.because(at!(antenna.gain), "its gain");
        if widest.is_some() {
            finding.because(at!(antenna.beamwidth), "its beam");
        }
        finding.because(code.place, format!("asks for {asked}"));
        finding.help(format!("take an antenna of {} or more{or}; {ASK}", least.rounded_up()));
        soften(finding, code.antenna_known);
    }
}
