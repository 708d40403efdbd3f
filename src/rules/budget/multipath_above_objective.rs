//! Multipath fading takes more time than the objective leaves.

use crate::finding::rule::Severity;
use crate::rules::prelude::*;
use crate::units::Percent;

rule! {
    /// Multipath fading takes more time than the objective leaves.
    ///
    /// The availability of the sheet counts rain alone. On hops over 5 km the outage of multipath fading in the worst month stands
    /// beside it, and is held against what the objective leaves of a year. A month is a twelfth of a year: where a twelfth of
    /// that outage is too much by itself, the objective is missed; where only the whole is, the objective is not shown to be
    /// kept, and this is a warning.
    ///
    /// Source: ITU-R P.530-18 §2.3.2; the bounds are arithmetic.
    severity: Error,
    waivable: SERVICE,
    check: Hop(check),
}

/// Months of a year.
const MONTHS: f64 = 12.0;

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let outage = |direction: &Direction<'_>| direction.margins.multipath.get();
    let Both { a, b } = hop.directions.each_ref();
    let direction = if outage(b) > outage(a) { b } else { a };
    let Some(month) = outage(direction) else { return };
    let wanted = &hop.target.availability;
    let leaves = (Percent(100.0) - wanted.value()).tidy();
    if month <= leaves {
        return;
    }
    let (has, allowed, _) = apart(month, leaves);
    let message = format!(
        "{}: multipath fading takes {has} of the worst month, more than the {allowed} that {} leaves of a year",
        direction.way, wanted.given
    );
    let spec = hop.resolved.hop;
    let label = format!("margin {}", line(&direction.margins.fade_margin));
    let finding = found.report(&RULE, at!(spec.id), message, label);
    finding.measured(month, Worse::Higher).of_whole_hop();
    finding.because(wanted.place, format!("{} asked for here", wanted.given));
    if Percent(month.0 / MONTHS) <= leaves {
        finding.at_most(Severity::Warning);
    }
    finding.help("more margin, a shorter hop, or more slope between the ends: ten decibels are ten times less");
}
