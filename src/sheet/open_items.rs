//! What a record leaves open: checks not ticked, items not filled in.

use crate::network::ResolvedEnd;
use crate::spec::{AlignedBy, Carried, Check, Reading, Record, Verdict};

/// The checks that the work at an end brings with it.
#[must_use]
pub fn required_checks(own: &ResolvedEnd<'_>, far: &ResolvedEnd<'_>) -> Vec<Check> {
    let controls = |end: &ResolvedEnd<'_>| end.radio.automatic_power_control.unwrap_or(true);
    let needed = |check: &Check| match check {
        Check::Arresters => own.runs.iter().any(|run| !run.arresters.is_empty()),
        Check::CablesTested | Check::Sealed => !own.runs.is_empty(),
        Check::PowerControlOff => controls(own) || controls(far),
        Check::MeterPortClosed => own.radio.readout.is_some(),
        _ => true,
    };
    Check::ALL.iter().copied().filter(needed).collect()
}

/// The checks an end needs that are not ticked.
pub(super) fn undone(record: &Record, own: &ResolvedEnd<'_>, far: &ResolvedEnd<'_>) -> Vec<Check> {
    required_checks(own, far).into_iter().filter(|check| !record.checks.contains(check)).collect()
}

/// The items an acceptance needs that are not filled in, in the order of the form.
pub(super) fn blank(record: &Record, own: &ResolvedEnd<'_>) -> Vec<String> {
    let settings = &record.settings;
    // Lamps and tones leave nothing to write down.
    let readable = !matches!(own.radio.aligned_by(), Some(AlignedBy::Indication(_)));
    let unread = |reading: &Reading| readable && reading.meter.is_none() && reading.level.is_none();
    let mut blank: Vec<String> = [
        (record.date.is_none(), "date"),
        (record.crew.is_empty(), "crew"),
        (record.weather.sky.is_none(), "weather.sky"),
        (record.instrument.title.is_none(), "instrument.title"),
        (settings.transmit_power.is_none(), "settings.transmit_power"),
        (settings.bandwidth.is_none(), "settings.bandwidth"),
        (settings.polarisation.is_none(), "settings.polarisation"),
        (unread(&record.before_locking), "before_locking"),
        (unread(&record.after_locking), "after_locking"),
    ]
    .into_iter()
    .filter(|(open, _)| *open)
    .map(|(_, key)| key.to_owned())
    .collect();
    for run in &own.runs {
        let found = record.runs.iter().find(|found| found.port == run.port.id);
        if run.run.carries.contains(&Carried::Power) && found.is_none_or(|found| found.voltage.is_none()) {
            blank.push(format!("runs.{}.voltage", run.port.id));
        }
        if found.is_none_or(|found| found.cable_test.is_none()) {
            blank.push(format!("runs.{}.cable_test", run.port.id));
        }
    }
    let conceded = record.decision.as_ref().is_some_and(|made| made.verdict == Verdict::AcceptedWithConcession);
    let service = &record.service;
    let rest = [
        (service.state.is_none(), "service.state"),
        (service.rate.is_none(), "service.rate"),
        (service.errors.is_none(), "service.errors"),
        (service.duration.is_none(), "service.duration"),
        (record.grounding.conductor.is_none(), "grounding.conductor"),
        (record.serials.radio.is_none(), "serials.radio"),
        (conceded && !record.deviations.iter().any(|one| one.concession.is_some()), "deviations.concession"),
        (record.decision.is_none(), "decision"),
    ];
    blank.extend(rest.into_iter().filter(|(open, _)| *open).map(|(_, key)| key.to_owned()));
    blank
}
