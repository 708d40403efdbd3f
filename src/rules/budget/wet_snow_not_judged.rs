//! Nothing says whether snow melts on the paths.

use crate::finding::rule::Severity;
use crate::rules::prelude::*;

rule! {
    /// Nothing says whether snow melts on the paths.
    ///
    /// Melting snow costs up to three and a half times the rain it becomes. Weighted by how often the rain height of a day lies
    /// where, it makes rain fades up to a third greater on paths that lie within kilometres of its mean, and nothing of them
    /// far above. Without `climate.rain_height` all that falls is taken as rain. Advice; a warning where
    /// `climate.coldest_air` is below freezing.
    ///
    /// Source: ITU-R P.530-18 §2.4.2; the rain height is that of P.839-4: the 0 °C isotherm and 360 m.
    severity: Warning,
    never_off: NOT_JUDGED,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    if hop.target.rain_height.is_some() {
        return;
    }
    let network = hop.resolved.network;
    let coldest = &hop.ends.a.practice.coldest_air;
    let freezes = coldest.as_ref().is_some_and(|cold| cold.value() < Celsius(0.0));
    let message = "whether snow melts on the path is not judged: no rain height is given";
    let finding = found.report(&RULE, at!(network.climate.rain_height), message, "no `rain_height` here");
    match coldest.as_ref().filter(|_| freezes) {
        Some(cold) => threshold(finding, cold, "it freezes here".into()),
        None => {
            finding.at_most(Severity::Advice);
        }
    }
    finding.help("add `climate: { rain_height: … }`, the mean height of the 0 °C isotherm above the sea and 360 m");
}
