//! An extension plate is asked of a bracket that has none.

use crate::rules::prelude::*;

rule! {
    /// An extension plate is asked of a bracket that has none.
    ///
    /// The tilt is then that of the bracket alone, and the crew looks for a part that is not in the box.
    ///
    /// Source: the bracket's data sheet.
    severity: Error,
    waivable: WORK,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, bracket) = (sheet.resolved.end, sheet.resolved.bracket);
    if !end.bracket.plate || bracket.plate.is_some() {
        return;
    }
    let message = format!("end {}: bracket `{}` has no extension plate", sheet.name, bracket.id);
    let finding = found.report(&RULE, at!(end.bracket.plate), message, "there is none to fit");
    finding.because(at!(bracket.id), "lists no `plate`");
    finding.help("take the line out, take a bracket with a plate, or describe the plate under `plate` of this one");
}
