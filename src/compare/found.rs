//! The findings of both sides, matched, and which side has each.

use super::became;
use super::change::{Aside, FindingChange, Status};
use super::edits::Edits;
use super::held::{Held, keyed, keyed_by};
use super::hop_trees::HopTrees;
use crate::finding::Finding;
use crate::finding::rule::Severity;

/// A finding and which side has it, before it is known whether it will be shown where.
pub(super) struct Found<'f> {
    pub change: FindingChange,
    finding: &'f Finding,
    side: usize,
}

impl Found<'_> {
    /// The same with its place.
    pub(super) fn placed(self, edits: &Edits<'_>, trees: &[HopTrees<'_>; 2]) -> FindingChange {
        let spot = self.finding.labels.first().map(|label| &label.spot);
        let place = spot.and_then(|spot| edits.line(self.side, spot, &trees[self.side]));
        FindingChange { place, ..self.change }
    }

    /// Whether both sides have it, and nothing of it moved.
    pub(super) fn is_as_before(&self) -> bool {
        self.change.status == Status::Existing
    }
}

/// The findings of both sides, matched by rule and place; with several at one place, by their order.
pub(super) fn findings<'f>(before: &'f [Finding], after: &'f [Held]) -> Vec<Found<'f>> {
    let (old, new) = (keyed(before), keyed_by(after, |held| &held.finding));
    let mut found = Vec::new();
    let make = |status, finding: &'f Finding, side: usize, aside: Option<Aside>| {
        let (rule, severity, message) = (finding.rule.name, finding.severity, finding.message.clone());
        Found { change: FindingChange { status, rule, severity, message, place: None, aside }, finding, side }
    };
    for (key, held) in &new {
        let status = old.get(key).map_or(Status::New, |known| became::status(known, &held.finding));
        found.push(make(status, &held.finding, 1, held.aside));
    }
    let gone = old.iter().filter(|(key, _)| !new.contains_key(*key));
    found.extend(gone.map(|(_, finding)| make(Status::Fixed, finding, 0, None)));
    let weight = |severity: Severity| std::cmp::Reverse(severity);
    found.sort_by(|Found { change: one, .. }, Found { change: other, .. }| {
        (one.status, weight(one.severity), one.rule, &one.message).cmp(&(
            other.status,
            weight(other.severity),
            other.rule,
            &other.message,
        ))
    });
    found
}
