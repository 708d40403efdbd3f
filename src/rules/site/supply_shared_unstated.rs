//! A supply feeds several runs, and how much it gives to all of them is not said.

use crate::rules::prelude::*;
use crate::sheet::Cause;

rule! {
    /// A supply feeds several runs, and how much it gives to all of them is not said.
    ///
    /// `power` of a supply is that of one port. Whether the supply has that much for all of them together is on its data sheet:
    /// `total_power`. So many runs that nobody sums them are not judged either. Said at the last of the runs.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    for shared in sheet.shared.iter().filter(|shared| shared.told_here) {
        let unjudged = |cause: Option<Cause>| cause == Some(Cause::Judged);
        let total = unjudged(shared.lines.total.value().err().map(|missing| missing.cause));
        let resolved = &sheet.resolved.runs[shared.run];
        let (run, Some(supply)) = (resolved.run, resolved.supply) else { continue };
        if !total {
            continue;
        }
        let count = shared.feeds.len();
        let message = format!(
            "supply `{}` feeds {count} runs, and what it gives to all of them together is not stated",
            supply.id
        );
        let finding = found.report(&RULE, at!(supply.total_power), message, "no `total_power` here");
        finding.because(at!(run.supply_unit), "the last of them");
        finding.help("add `total_power:` to the supply from its data sheet");
    }
}
