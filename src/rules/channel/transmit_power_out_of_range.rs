//! The transmit power cannot be set on this radio.

use crate::rules::prelude::*;
use crate::units::Dbm;

rule! {
    /// The transmit power cannot be set on this radio.
    ///
    /// Source: the power range on the radio's data sheet.
    severity: Error,
    never_waived: RADIATES,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, radio) = (sheet.resolved.end, sheet.resolved.radio);
    let (power, range) = (end.transmit_power.value, &radio.transmit_power);
    if range.holds(power) {
        return;
    }
    let nearest = if power > range.max.value { &range.max } else { &range.min };
    let (has, limit, beyond) = apart(power, nearest.value);
    let message = format!("end {}: {has} is outside {range}, {beyond} beyond {limit}", sheet.name);
    let finding = found.report(&RULE, at!(end.transmit_power), message, "this radio cannot be set to it");
    finding.measured(power, if power > range.max.value { Worse::Higher } else { Worse::Lower });
    finding.because(at!(radio.transmit_power), "its range");
    // Written in watts or milliwatts, the number may have been one of decibels.
    let number = end.transmit_power.to_string().split_whitespace().next().and_then(|word| word.parse::<f64>().ok());
    let meant = number.map(Dbm).filter(|meant| *meant != power && range.holds(*meant));
    match meant {
        Some(meant) => {
            finding.help(format!("was `{meant}` meant? Power is given in dBm; else set {nearest}"));
            finding.fix_unsafely(vec![(at!(end.transmit_power).into(), meant.to_string())], "it changes the power");
        }
        None => {
            finding.help(format!("set {nearest}"));
        }
    }
}
