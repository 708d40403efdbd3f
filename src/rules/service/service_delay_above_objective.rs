//! A service is later than is asked for.

use crate::rules::prelude::*;
use crate::sheet::ServiceSheet;

rule! {
    /// A service is later than is asked for.
    ///
    /// Counted are propagation over the lengths from antenna to antenna and `latency` of every radio at both ends of each hop, as
    /// far as it is stated; the message says what the delay is made of. Of two routes the later counts. Queues, cables and what
    /// stands between the hops are not in it.
    ///
    /// Use fewer hops, or radios that pass traffic on faster.
    ///
    /// Source: definition; refractivity of ITU-R P.453-14 from memory.
    severity: Error,
    waivable: SERVICE,
    check: Service(check),
}

fn check(sheet: &ServiceSheet<'_>, found: &mut Findings) {
    let service = sheet.resolved.service;
    let (Some(wanted), Some(has)) = (&sheet.objectives.delay, sheet.lines.delay.get()) else { return };
    if has <= wanted.value() {
        return;
    }
    let (has_words, wants, _) = apart(has, wanted.value());
    let name = sheet.lines.delay.own_words().unwrap_or("delay, one way");
    let name = name.strip_suffix(", one way").unwrap_or(name);
    let message = format!("{name} of service `{}` is {has_words} one way, above {wants}", service.id);
    let finding = found.report(&RULE, at!(service.routes), message, "over these hops");
    finding.measured(has, Worse::Higher);
    finding.because(wanted.place, format!("{} required here", wanted.given));
    finding.help("fewer or shorter hops, or radios of less `latency`");
}
