//! The service test did not carry what the hop is for.

use crate::rules::prelude::*;

rule! {
    /// The service test did not carry what the hop is for.
    ///
    /// A level says that an antenna is aimed; that the hop carries its traffic only traffic says. The rate that was received
    /// must reach `objectives.capacity`, in a state that has that rate, without a frame lost or wrong.
    ///
    /// Source: the objectives of the hop and the states of its radio.
    severity: Error,
    waivable: SERVICE,
    check: Record(check),
}

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (record, wanted) = (sheet.document, &sheet.limits.capacity);
    let (test, end) = (&record.service, sheet.end);
    let [state_holds, rate_holds, clean, _] = sheet.service_holds(hop.resolved);
    if let (Some(rate), Some(false)) = (&test.rate, rate_holds) {
        let (has, wants, by) = apart(rate.value, wanted.value());
        let message = format!("end {end}: {has} received, {by} less than the {wants} the hop is for");
        let finding = found.report(&RULE, at!(record.service.rate), message, "as tested");
        finding.measured(rate.value, Worse::Lower);
        finding.because(wanted.place, "the required rate");
        finding.help("look at the state the radio reached and at its ports and settings, then test again");
    }
    if let (Some(state), Some(false)) = (&test.state, state_holds) {
        let radio = hop.ends[end].resolved.radio;
        let message = format!("end {end}: state `{state}` does not carry the {} the hop is for", wanted.given);
        let finding = found.report(&RULE, at!(record.service.state), message, "as reached");
        finding.because(at!(radio.states), "its states and their rates");
        finding.because(wanted.place, "the required rate");
        finding.help("look for what keeps the radio from a faster state: level, interference, settings of both ends");
    }
    if let (Some(errors), Some(false)) = (test.errors, clean) {
        let message = format!("end {end}: frames or blocks lost or wrong in the service test: {errors}");
        let finding = found.report(&RULE, at!(record.service.errors), message, "as counted");
        finding.help("find where they are lost: the cables first, then level and interference; then test again");
    }
}
