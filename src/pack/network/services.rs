//! What hops carry together, a service a row.

use crate::pack::words::Table;
use crate::sheet::ServiceSheet;
use crate::voice::{Voice, shown};

/// The table before the first service.
pub(super) fn head(voice: Voice) -> Table {
    Table::new(voice, ["service", "routes", "capacity", "delay", "availability", "state"])
}

/// The row of a service: what it has, and what is asked for where it is.
pub(super) fn row(sheet: &ServiceSheet<'_>, voice: Voice) -> [String; 6] {
    let (service, lines, asked) = (sheet.resolved.service, &sheet.lines, &sheet.objectives);
    let routes = sheet.resolved.routes.iter().map(|route| route.ids().collect::<Vec<_>>().join(", "));
    let wanted = |words: Option<String>, has: String| match words {
        Some(wanted) => voice.with("has-of-wanted", &[("has", &has), ("wanted", &wanted)]),
        None => has,
    };
    let least = |given: &dyn std::fmt::Display| format!("≥\u{a0}{}", voice.number(given));
    let capacity = asked.capacity.as_ref().map(|wanted| least(&wanted.given));
    let delay = asked.delay.as_ref().map(|wanted| format!("≤\u{a0}{}", voice.number(&wanted.given)));
    let availability = asked.availability.as_ref().map(|wanted| least(&wanted.given));
    let late = voice.line(&lines.delay);
    let late = if sheet.without_latency.is_empty() { late } else { voice.with("delay-at-least", &[("delay", &late)]) };
    [
        shown(service.title.as_ref().map_or(&*service.id.0, |title| &*title.0)),
        routes.collect::<Vec<_>>().join(" | "),
        wanted(capacity, voice.line(&lines.capacity)),
        wanted(delay, late),
        wanted(availability, voice.line(&lines.availability)),
        voice.say(state(sheet)),
    ]
}

/// Whether all that is asked of it is met.
fn state(sheet: &ServiceSheet<'_>) -> &'static str {
    let (lines, asked) = (&sheet.lines, &sheet.objectives);
    let known = |wanted: bool, met: Option<bool>| if wanted { met } else { Some(true) };
    let availability = asked.availability.as_ref();
    let capacity = asked.capacity.as_ref();
    let delay = asked.delay.as_ref();
    let in_part = !sheet.without_latency.is_empty();
    let each = [
        known(
            availability.is_some(),
            lines.availability.get().zip(availability).map(|(has, wanted)| has >= wanted.value()),
        ),
        known(capacity.is_some(), lines.capacity.get().zip(capacity).map(|(has, wanted)| has >= wanted.value())),
        // Of a delay that is known in part only that it is missed can be known.
        known(
            delay.is_some(),
            lines.delay.get().zip(delay).map(|(has, wanted)| has <= wanted.value()).filter(|met| !(*met && in_part)),
        ),
    ];
    match each {
        _ if sheet.is_broken() => "not-evaluated",
        all if all.contains(&Some(false)) => "not-met",
        all if all.contains(&None) => "not-evaluated",
        _ if availability.is_none() && capacity.is_none() && delay.is_none() => "nothing-asked",
        _ => "met",
    }
}
