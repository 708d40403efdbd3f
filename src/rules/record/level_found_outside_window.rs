//! The level found lies outside the acceptance window.

use super::{measured_at, read_at, sweeps};
use crate::rules::prelude::*;

rule! {
    /// The level found lies outside the acceptance window.
    ///
    /// The prediction is made again for the day of the visit: air, rain and fog as the record states them, the power
    /// back-off of the state that was set. A level that lies further from it than `objectives.acceptance_window` is not
    /// that of the hop that was designed. A level that is too strong is a fault like one that is too weak: wrong distance,
    /// wrong power, wrong model, or a receiver near its overload. One above the overload of the receiver is a fault whatever
    /// was predicted, and even where nothing could be.
    ///
    /// Source: the budget of the hop (ITU-R P.525-4, P.676-13, P.838-3); the window is common practice, 4 dB unless set.
    severity: Error,
    waivable: SERVICE,
    check: Record(check),
}

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    if sheet.overloaded(&hop.ends[sheet.end]) {
        return overloaded(hop, sheet, found);
    }
    let lines = &sheet.lines;
    let (Some(false), Some(measured)) = (sheet.in_window(), lines.measured.get()) else { return };
    let (Some(least), Some(most)) = (lines.expected_least.get(), lines.expected_most.get()) else { return };
    let weak = measured < least;
    let (edge, word) = if weak { (least, "below") } else { (most, "above") };
    let (has, limit, by) = apart(measured, edge);
    let message = format!("end {}: {has} after locking is {by} {word} the {limit} to accept", sheet.end);
    let (window, expected) = (&sheet.limits.window, line(&lines.expected));
    let label = format!("this is {has}; {expected} was expected, {} either way", window.given);
    let finding = found.report(&RULE, measured_at(sheet), message, label);
    finding.measured(measured, if weak { Worse::Lower } else { Worse::Higher }).known_at(read_at(sheet));
    let end = &hop.ends[sheet.end];
    let (radio, far) = (end.resolved.radio, end.far.end);
    finding.because(at!(far.transmit_power), "with this power at the far end");
    if !window.assumed {
        finding.because(window.place, "the acceptance window");
    }
    finding.help(if weak {
        let sweeps = sweeps(hop, sheet);
        format!("sweep both axes, {sweeps}, then compare power, channel and polarisation")
    } else {
        format!(
            "check power and models at both ends and the position; the receiver is overloaded at {}",
            radio.overload
        )
    });
}

/// A level that the receiver does not take, whatever was expected.
fn overloaded(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let end = &hop.ends[sheet.end];
    let (radio, far) = (end.resolved.radio, end.far.end);
    let Some(measured) = sheet.lines.measured.get() else { return };
    let (has, limit, by) = apart(measured, radio.overload.value);
    let message =
        format!("end {}: {has} after locking is {by} above the {limit} that overloads the receiver", sheet.end);
    let label = format!("this is {has}; {} was expected", line(&sheet.lines.expected));
    let finding = found.report(&RULE, measured_at(sheet), message, label);
    finding.measured(measured, Worse::Higher);
    finding.because(at!(radio.overload), "the strongest level it takes");
    finding.because(at!(far.transmit_power), "with this power at the far end");
    finding.help("lower the power at the far end and read again; check models at both ends and the position");
}
