//! A service carries less than is asked for.

use crate::rules::prelude::*;
use crate::sheet::ServiceSheet;

rule! {
    /// A service carries less than is asked for.
    ///
    /// Its capacity is that of its weakest hop, of the weaker way, in the modulation state that the hop's own objective asks for:
    /// the availability counts no faster one. Of two routes the lesser counts, for either may have to carry all of it.
    ///
    /// Ask more of the hop, so that its availability is counted in a faster state; or give it a wider channel.
    ///
    /// Source: definition; a row carries what its weakest part carries.
    severity: Error,
    waivable: SERVICE,
    check: Service(check),
}

fn check(sheet: &ServiceSheet<'_>, found: &mut Findings) {
    let service = sheet.resolved.service;
    let (Some(wanted), Some(has)) = (&sheet.objectives.capacity, sheet.lines.capacity.get()) else { return };
    if has >= wanted.value() {
        return;
    }
    let (has_words, wants, _) = apart(has, wanted.value());
    let message = format!("service `{}` carries {has_words} each way, below {wants}", service.id);
    let finding = found.report(&RULE, at!(service.routes), message, "over these hops");
    finding.measured(has, Worse::Lower);
    finding.because(wanted.place, format!("{} required here", wanted.given));
    for (hop, document) in &sheet.weakest {
        let place = crate::place::Place::document(*document).below(&"id", &[]);
        finding.because(place, format!("`{hop}` carries no more"));
    }
    finding.help(format!(
        "`objectives.capacity` of that hop names the state it is judged in: ask {wants} of it, and see what becomes of its availability"
    ));
}
