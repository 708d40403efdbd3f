//! The radio was not set as designed.

use crate::rules::prelude::*;

rule! {
    /// The radio was not set as designed while the level was read.
    ///
    /// With another power, bandwidth or polarisation the level is not the one that was predicted, and what was accepted is
    /// not what was approved. Automatic power control turns the far end down as the level rises and so hides the peak.
    ///
    /// Source: the settings of the hop; that power control is to be off is common practice.
    severity: Warning,
    never_waived: RADIATES,
    check: Record(check),
}

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (record, spec) = (sheet.document, hop.resolved.hop);
    let (end, own) = (sheet.end, hop.ends[sheet.end].resolved);
    let (set, channel, designed) = (&record.settings, &spec.channel, own.end);
    let [power_holds, width_holds, polarisation_holds] = sheet.as_set(hop.resolved);
    if let (Some(power), Some(false)) = (&set.transmit_power, power_holds) {
        let (has, wants, by) = apart(power.value, designed.transmit_power.value);
        let message = format!("end {end}: set to {has}, {by} from the {wants} of the design");
        let finding = found.report(&RULE, at!(record.settings.transmit_power), message, "as set");
        let worse = if power.value < designed.transmit_power.value { Worse::Lower } else { Worse::Higher };
        finding.measured(power.value, worse).because(at!(designed.transmit_power), "as designed");
        finding.help(format!("set {} and read both ends again, or change the hop", designed.transmit_power));
    }
    if let (Some(width), Some(false)) = (&set.bandwidth, width_holds) {
        let message = format!("end {end}: set to {width} of bandwidth, designed for {}", channel.bandwidth);
        let finding = found.report(&RULE, at!(record.settings.bandwidth), message, "as set");
        finding.because(at!(spec.channel.bandwidth), "as designed");
        finding.help(format!("set {} and read both ends again, or change the hop", channel.bandwidth));
    }
    if let (Some(polarisation), Some(false)) = (set.polarisation, polarisation_holds) {
        let (has, wants) = (polarisation.word(), channel.polarisation.word());
        let message = format!("end {end}: mounted for {has} polarisation, designed for {wants}");
        let finding = found.report(&RULE, at!(record.settings.polarisation), message, "as mounted");
        finding.because(at!(spec.channel.polarisation), "as designed, at both ends");
        finding.help("turn both antennas to the same polarisation; another than designed may not be licensed");
    }
    if let Some(state) = &set.state {
        let radio = own.radio;
        let usable = || radio.states.iter().filter(|one| one.bandwidth == channel.bandwidth).map(|one| &*one.title);
        if !usable().any(|title| *title == **state) {
            let message = format!("end {end}: the radio has no state `{state}` at {}", channel.bandwidth);
            let finding = found.report(&RULE, at!(record.settings.state), message, "not a state of this radio");
            finding.because(at!(radio.states), "its states");
            finding.help(format!("one of: {}", usable().collect::<Vec<_>>().join(", ")));
        }
    }
    if set.automatic_power_control == Some(true) {
        let message = format!("end {end}: automatic power control was on while reading");
        let place = at!(record.settings.automatic_power_control);
        let finding = found.report(&RULE, place, message, "holds the level and hides the peak");
        finding.help("switch it off at both ends and read again");
    }
}
