//! The path lies where snow melts.

use crate::rules::prelude::*;

rule! {
    /// The path lies where snow melts.
    ///
    /// Flakes that melt are big and wet: they cost up to three and a half times the rain they become. The rain outage of
    /// the sheet counts rain alone, so for a path between the mean rain height and 1200 m below it, it is too hopeful.
    /// How much is not computed: that takes the distribution of rain heights over the year.
    ///
    /// Keep more margin than the objective asks for, or lower the path. Without `climate.rain_height` the rule is silent.
    ///
    /// Source: ITU-R P.530-18 §2.4.2; the rain height is that of P.839-4.
    severity: Warning,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let (Some(falls), Some(wanted)) = (hop.path.falls.get(), &hop.target.rain_height) else { return };
    if !falls.in_melting_layer {
        return;
    }
    let (a, b) = (hop.resolved.ends.a.site, hop.resolved.ends.b.site);
    let altitudes = hop.ends.each_ref().map(|end| line(&end.lines.altitude));
    let message = format!("the path from {} to {} above the sea lies where snow melts", altitudes.a, altitudes.b);
    let label = format!("snow melts from {} down to 1200 m below", wanted.given);
    let finding = found.report(&RULE, wanted.place, message, label);
    finding.of_whole_hop().because(at!(a.ground_height), "end a stands here");
    finding.because(at!(b.ground_height), "end b stands here");
    finding.help("melting snow may fade it by up to 3.5 times the rain fade: keep margin beyond the objective");
}
