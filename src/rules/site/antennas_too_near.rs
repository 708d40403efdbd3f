//! Two antennas on a support leave too little room between them.

use crate::finding::rule::Rule;
use crate::rules::prelude::*;
use crate::sheet::Beside;

rule! {
    /// Two antennas on a support leave too little room between them.
    ///
    /// A bracket has to be turned, a bolt tightened and a cover taken off between them. The room is that between two boxes:
    /// see `antennas-collide`. What is found is told at the hop whose id comes later.
    ///
    /// Source: common practice, no source; `limits.antenna_gap` sets it.
    severity: Warning,
    waivable: WORK,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let limit = &sheet.practice.antenna_gap;
    for beside in sheet.others.iter().filter(|beside| beside.told_here) {
        let Some(room) = beside.lines.room.get().filter(|room| room.0 >= 0.0) else { continue };
        if room >= limit.value() {
            continue;
        }
        let (hop, end) = (&beside.fellow.hop.hop.id, beside.fellow.end.name);
        let (has, wanted, by) = apart(room, limit.value());
        let message =
            format!("end {}: {has} of room to the antenna of `{hop}`, end {end}, {by} less than {wanted}", sheet.name);
        let finding = near(&RULE, sheet, beside, message, found);
        finding.measured(room, Worse::Lower);
        threshold(finding, limit, "the required room".into());
        finding.help(other_height(sheet, beside));
    }
}

/// A finding about two antennas on one support, at the later one.
pub(super) fn near<'f>(
    rule: &'static Rule,
    sheet: &EndSheet<'_>,
    beside: &Beside<'_>,
    message: String,
    found: &'f mut Findings,
) -> &'f mut Finding {
    let (end, dish) = (sheet.resolved.end, sheet.resolved.antenna);
    let (other, its_dish) = (beside.fellow.end.end, beside.fellow.end.antenna);
    let width = |diameter: &crate::sheet::Line<Millimetres>| diameter.get().map(|width| format!(", {width} across"));
    let across = width(&beside.lines.diameter).unwrap_or_default();
    let finding = found.report(rule, at!(end.height), message, "this one");
    finding.about(format!("{}/{}", beside.fellow.hop.hop.id, beside.fellow.end.name));
    finding.because(at!(other.height), format!("the other one{across}"));
    finding.decided_by(at!(dish.diameter)).decided_by(at!(its_dish.diameter));
    finding.decided_by(at!(end.support)).decided_by(at!(other.support));
    finding
}

/// How high or low this antenna would have enough room.
pub(super) fn other_height(sheet: &EndSheet<'_>, beside: &Beside<'_>) -> String {
    let Some([low, high]) = clear_heights(sheet, beside) else { return "another height, or another support".into() };
    let support = sheet.resolved.support;
    let (base, top) = (support.base_height.value, support.base_height.value + support.free_length.value);
    match (low >= base, high <= top) {
        (true, true) => format!("{low} or lower, or {high} or higher; or another support"),
        (true, false) => format!("{low} or lower; or another support"),
        (false, true) => format!("{high} or higher; or another support"),
        (false, false) => "the support has no room for both: another support".into(),
    }
}

/// The heights below and above which the two bodies leave the room asked for, whatever their bearings.
fn clear_heights(sheet: &EndSheet<'_>, beside: &Beside<'_>) -> Option<[Metres; 2]> {
    let (own, other) = (sheet.diameter?, beside.lines.diameter.get()?);
    let away = (f64::midpoint(own.0, other.0) + sheet.practice.antenna_gap.value().0) / 1000.0;
    let height = beside.fellow.end.end.height.value.0;
    Some([Metres(height - away).rounded_down(), Metres(height + away).rounded_up()])
}
