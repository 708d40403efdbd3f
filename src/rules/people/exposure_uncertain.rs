//! People pass an antenna, and how much it may radiate beyond its figures is not said.

use crate::finding::rule::Severity;
use crate::rules::prelude::*;
use crate::sheet::KeepClear;

rule! {
    /// People pass an antenna, and how much it may radiate beyond its figures is not said.
    ///
    /// The distance to keep is computed from power and gain. A radio may send more than it is set to, an antenna may have more
    /// gain than its sheet says; where no tolerance is stated, the distance may be too short by nobody knows how much. Advice where
    /// by the figures nobody has to keep any distance.
    ///
    /// Source: common practice, no source; tolerances are on the data sheets.
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (site, radio, dish) = (sheet.resolved.site, sheet.resolved.radio, sheet.resolved.antenna);
    let lacks = [
        (radio.transmit_tolerance.is_none(), at!(radio.transmit_tolerance), format!("radio `{}`", radio.id), "power"),
        (dish.gain_tolerance.is_none(), at!(dish.gain_tolerance), format!("antenna `{}`", dish.id), "gain"),
    ];
    let open: Vec<_> = lacks.into_iter().filter(|(lacks, ..)| *lacks).collect();
    if site.people.is_empty() || open.is_empty() {
        return;
    }
    let named: Vec<&str> = open.iter().map(|(_, _, who, _)| who.as_str()).collect();
    let message = format!(
        "end {}: exposure where people pass is not certain: no tolerance is stated of {}",
        sheet.name,
        named.join(" and ")
    );
    let finding = found.report(&RULE, at!(site.people), message, "people pass here");
    for (_, place, _, what) in &open {
        finding.because(*place, format!("no tolerance of its {what}"));
    }
    if sheet.people.public_distance.get().is_some_and(|KeepClear(reach)| reach.0 <= 0.0) {
        finding.at_most(Severity::Advice);
    }
    finding.help("add `transmit_tolerance` to the radio and `gain_tolerance` to the antenna from their sheets");
}
