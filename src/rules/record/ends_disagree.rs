//! The two ends disagree by more than reciprocity allows.

use super::measured_at;
use crate::rules::prelude::*;

rule! {
    /// The two ends disagree by more than reciprocity allows.
    ///
    /// Path and antennas are the same in both directions. Once the predicted level of each day is taken off, what is left
    /// at one end must be left at the other. Where it is not, one power or state is not what it should be, one cover is wet
    /// or damaged, or one radio is at fault. Poor aim lowers both ends alike and is not seen here. The newest record of each
    /// end counts; the threshold is `limits.reciprocity`, 3 dB unless set.
    ///
    /// Source: reciprocity of antennas and path; the threshold is common practice, no source.
    severity: Warning,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let newest = [EndName::A, EndName::B].map(|end| hop.newest_record(end));
    let [Some(a), Some(b)] = newest else { return };
    let [Some(left_a), Some(left_b)] = [a, b].map(|record| record.lines.difference.get()) else { return };
    let limit = &a.limits.reciprocity;
    let Some(gap) = hop.disagreement() else { return };
    if gap.tidy() <= limit.value() {
        return;
    }
    let (has, may, by) = apart(gap, limit.value());
    let message =
        format!("the ends disagree by {has} once the predictions are taken off, {by} more than the {may} they may");
    let (low, high) = if left_a < left_b { (a, b) } else { (b, a) };
    let said = |record: &RecordSheet<'_>| {
        let (measured, expected) = (line(&record.lines.measured), line(&record.lines.expected));
        format!("end {}: {measured} where {expected} was expected", record.end.letter())
    };
    let finding = found.report(&RULE, measured_at(low), message, said(low));
    finding.because(measured_at(high), said(high));
    if !limit.assumed {
        finding.because(limit.place, "what may be between them");
    }
    let help = "compare power, power control and state at both ends, dry and check the covers, then swap a radio; ";
    finding.help(format!("{help}new aim does not mend one direction"));
}
