//! Runs together ask more of a supply than it gives.

use crate::rules::prelude::*;

rule! {
    /// Runs together ask more of a supply than it gives.
    ///
    /// Each port may be within its limit and all of them together beyond what the supply has. A supply of IEEE 802.3 keeps the
    /// power of a class for each device that asks for one, however little it draws: what it keeps counts, or what is drawn
    /// where that is more. Ports it has no power left for stay dark. What is found is told at the last of the runs.
    ///
    /// Source: the total on the supply's data sheet; classes of IEEE 802.3-2022 clauses 33 and 145 (second-hand).
    severity: Error,
    never_waived: SHOCKS,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    for shared in sheet.shared.iter().filter(|shared| shared.told_here) {
        let lines = &shared.lines;
        let (Some(drawn), Some(reserved), Ok(total)) = (lines.drawn.get(), lines.reserved.get(), lines.total.value())
        else {
            continue;
        };
        let asked = if reserved > drawn { reserved } else { drawn };
        if asked <= total.value {
            continue;
        }
        let resolved = &sheet.resolved.runs[shared.run];
        let (run, Some(supply)) = (resolved.run, resolved.supply) else { continue };
        let (wants, gives, by) = apart(asked, total.value);
        let count = shared.feeds.len();
        let message = format!(
            "end {}: {wants} asked of supply `{}` by {count} runs together, {by} more than the {gives} it gives",
            sheet.name,
            run.spec.supply_unit.as_ref().map(ToString::to_string).unwrap_or_default()
        );
        let finding =
            found.report(&RULE, at!(run.supply_unit), message, format!("{drawn} drawn, {reserved} kept for classes"));
        finding.measured(asked, Worse::Higher);
        finding.because(at!(supply.total_power), "the most it gives on all ports");
        // The last of them is this one.
        for feeds in shared.feeds.iter().take(shared.feeds.len() - 1).take(8) {
            let (other, id) = (feeds.fellow.end.runs[feeds.run].run, &feeds.fellow.hop.hop.id);
            finding.because(at!(other.supply_unit), format!("`{id}`, end {}", feeds.fellow.end.name));
        }
        finding.help(format!("a supply of {} or more on all ports, or a second one", asked.rounded_up()));
    }
}
