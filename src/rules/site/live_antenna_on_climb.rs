//! Whoever climbs to an antenna passes a live one, and nobody says whom to call.

use crate::rules::prelude::*;
use crate::sheet::KeepClear;

rule! {
    /// Whoever climbs to an antenna passes a live one, and nobody says whom to call.
    ///
    /// An antenna of another hop that is lower on the same support is passed on the way up. Where its power asks for a
    /// distance from its front, somebody has to be called who can switch it off or lower it, and the site lists no `contacts`.
    /// With contacts nothing is found: the install pack names every antenna that is passed, its distances and whom to call.
    ///
    /// Only hops of this network are known. Antennas of other owners on the support are not: list them under `hazards`.
    ///
    /// Source: exposure as in `people-too-near`; that the distance for whoever passes counts on a climb is common practice.
    severity: Error,
    never_waived: PROTECTS_PEOPLE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let site = sheet.resolved.site;
    if !site.contacts.is_empty() {
        return;
    }
    for beside in sheet.others.iter().filter(|beside| beside.is_passed) {
        let Some(KeepClear(reach)) = beside.lines.public_distance.get().filter(|reach| reach.0.0 > 0.0) else {
            continue;
        };
        let (end, other) = (sheet.resolved.end, beside.fellow.end.end);
        let (hop, its_end) = (&beside.fellow.hop.hop.id, beside.fellow.end.name);
        let message = format!(
            "end {}: the climb passes the live antenna of `{hop}`, end {its_end}, which asks for {reach} in front, and \
             nobody says whom to call",
            sheet.name
        );
        let finding = found.report(&RULE, at!(site.contacts), message, "no `contacts` at this site");
        finding.about(format!("{hop}/{its_end}"));
        finding.measured(reach, Worse::Higher);
        finding.because(at!(end.height), "the climb goes up to here");
        finding.because(at!(other.height), "and passes this one");
        finding.help("list under `contacts` who can switch it off or lower its power, with a telephone number");
    }
}
