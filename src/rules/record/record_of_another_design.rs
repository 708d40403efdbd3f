//! The record was not made from the design as it stands.

use crate::rules::prelude::*;

rule! {
    /// The record was not made from the design as it stands.
    ///
    /// The crew had another revision in hand, or the sources have changed since the pack was printed (the source mark at the
    /// foot of its pages is another), or the visit was before the day the design stands for. What was accepted may not be
    /// what is designed now. Look through the changes and say that they do not touch this end, or visit it again.
    ///
    /// Source: the revision, the date and the source mark of the network; common practice of document control.
    severity: Warning,
    waivable: EVIDENCE,
    check: Record(check),
}

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (record, network) = (sheet.document, hop.resolved.network);
    let (end, built) = (sheet.end, &record.built_from);
    let now = network.revision.as_deref().unwrap_or("none");
    let help = "see what has changed since: if it touches this end, visit it again with the new pack";
    let other_revision = built.revision.as_deref().filter(|had| *had != now);
    if let Some(had) = other_revision {
        let message = format!("end {end}: built from revision {had}, the network stands at {now}");
        let finding = found.report(&RULE, at!(record.built_from.revision), message, "what the crew had");
        finding.known_at(at!(record.id)).because(at!(network.revision), "what holds now");
        finding.help(help);
    } else if let (Some(had), Some(mark)) = (&built.mark, &hop.resolved.mark)
        && **had != **mark
    {
        let message = format!("end {end}: the sources have changed since the pack with mark {had} was printed");
        let finding = found.report(&RULE, at!(record.built_from.mark), message, "what the crew had");
        finding.known_at(at!(record.id)).because(at!(network.revision), "the same revision, but another mark");
        finding.help(help);
    }
    if let Some(date) = record.date.filter(|date| *date < network.date) {
        let message = format!("end {end}: visited on {date}, before the design of {}", network.date);
        let finding = found.report(&RULE, at!(record.date), message, "day of the visit");
        finding.because(at!(network.date), "the day the design stands for");
        finding.help(help);
    }
}
