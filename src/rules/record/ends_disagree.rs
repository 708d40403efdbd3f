//! The two ends disagree by more than reciprocity allows.

use super::measured_at;
use crate::rules::prelude::*;

rule! {
    /// The two ends disagree by more than reciprocity allows.
    ///
    /// Path and antennas are the same in both directions. Once the predicted level of each day is taken off, what is left
    /// at one end must be left at the other. Where it is not, one power or state is not what it should be, one cover is wet
    /// or damaged, or one radio is at fault. Poor aim lowers both ends alike and is not seen here. The newest record of each
    /// end counts; the threshold is `limits.reciprocity`, 3 dB unless set. A dish gains more at the higher of the two
    /// frequencies: where its gain is one figure for its band, without `gain_at` or `gain_by_frequency`, the predicted levels do
    /// not know of it, and what that makes of both antennas is taken off first, 2.2 dB between 73 and 83 GHz.
    ///
    /// Source: reciprocity of antennas and path; the gain of an aperture goes with the square of the frequency; the threshold is common practice, no source.
    severity: Warning,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let Some(newest) = Both::ends(|end| hop.newest_record(end)).all(|record| record) else { return };
    let Some(left) = newest.all(|record| record.lines.difference.get()) else { return };
    let limit = &newest.a.limits.reciprocity;
    let Some(gap) = hop.disagreement() else { return };
    if gap.tidy() <= limit.value() {
        return;
    }
    let (has, may, by) = apart(gap, limit.value());
    let message = format!(
        "the ends disagree by {has} once predictions and gains are taken off, {by} more than the {may} they may"
    );
    let favoured = hop.gain_in_favour_of_a().unwrap_or(Decibels(0.0));
    let lower = if left.a - favoured < left.b { EndName::A } else { EndName::B };
    let (low, high) = (newest[lower], newest[lower.far()]);
    let said = |record: &RecordSheet<'_>| {
        let (measured, expected) = (line(&record.lines.measured), line(&record.lines.expected));
        format!("end {}: {measured} where {expected} was expected", record.end)
    };
    let finding = found.report(&RULE, measured_at(low), message, said(low));
    finding.measured(gap, Worse::Higher).of_whole_hop();
    finding.because(measured_at(high), said(high));
    if !limit.assumed {
        finding.because(limit.place, "what may be between them");
    }
    let help = "compare power, power control and state at both ends, dry and check the covers, then swap a radio; ";
    finding.help(format!("{help}aiming again does not fix one direction"));
}
