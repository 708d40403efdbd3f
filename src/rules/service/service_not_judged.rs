//! Something that is asked of a service could not be judged.

use crate::place::Place;
use crate::rules::prelude::*;
use crate::sheet::{Cause, Missing, Reason, ServiceSheet};

rule! {
    /// Something that is asked of a service could not be judged.
    ///
    /// A hop of it could not be evaluated, or lacks what its outage or its capacity would be found by; or a delay is asked for and
    /// a radio states no `latency`, so that only a part of the delay is known. A service that is not judged must not look like one
    /// that passed.
    ///
    /// Fix the hop first; state the latency of the radio as its maker gives it.
    ///
    /// Source: none needed; nothing is concluded.
    severity: Error,
    never_waived: NOT_JUDGED,
    check: Service(check),
}

fn check(sheet: &ServiceSheet<'_>, found: &mut Findings) {
    if sheet.is_broken() {
        return;
    }
    let (objectives, lines) = (&sheet.objectives, &sheet.lines);
    let asked = [
        ("availability", objectives.availability.is_some(), lines.availability.value().err()),
        ("capacity", objectives.capacity.is_some(), lines.capacity.value().err()),
        ("delay", objectives.delay.is_some(), lines.delay.value().err()),
    ];
    let mut causes: Vec<(&Missing, Vec<&str>)> = Vec::new();
    for (what, _, missing) in asked.iter().filter(|(_, asked, _)| *asked) {
        let Some(missing) = missing else { continue };
        match causes.iter_mut().find(|(cause, _)| cause == missing) {
            Some((_, words)) => words.push(what),
            None => causes.push((missing, vec![what])),
        }
    }
    for (cause, words) in causes {
        say(sheet, cause, &words, found);
    }
    delay_in_part(sheet, found);
}

fn say(sheet: &ServiceSheet<'_>, cause: &Missing, words: &[&str], found: &mut Findings) {
    let service = sheet.resolved.service;
    let why = match cause.cause {
        Cause::Broken => format!("is not judged because of {}", cause.reason),
        Cause::Input | Cause::Judged => format!("is not judged: {}", cause.reason),
    };
    let message = format!("service `{}` {why}; so it has no {}", service.id, words.join(" and no "));
    let finding = found.report(&RULE, at!(service.id), message, "not judged");
    finding.because(cause.spot.clone(), "waits for this");
    finding.about(words.join(" "));
    finding.help(match cause.reason {
        Reason::HopNotEvaluated { .. } => {
            "the findings about that hop say why; the service will be checked once it is fixed"
        }
        _ => "fix this first; the service will then be checked",
    });
}

/// A delay of which only a part is known may be above its objective and not show it.
fn delay_in_part(sheet: &ServiceSheet<'_>, found: &mut Findings) {
    let service = sheet.resolved.service;
    let (Some(wanted), Some(has)) = (&sheet.objectives.delay, sheet.lines.delay.get()) else { return };
    let places: &[(String, Place)] = &sheet.without_latency;
    let Some((_, first)) = places.first().filter(|_| has <= wanted.value()) else { return };
    let radios: Vec<String> = places.iter().map(|(radio, _)| format!("`{radio}`")).collect();
    let message = format!(
        "delay of service `{}` is not judged: it is {has} and what {} adds, which nobody states",
        service.id,
        radios.join(", ")
    );
    let finding = found.report(&RULE, at!(service.objectives.delay), message, "not judged");
    finding.because(*first, "no `latency`");
    finding.about("delay in part");
    finding.help("state `latency` of the radio, in one direction through one terminal, as its maker gives it");
}
