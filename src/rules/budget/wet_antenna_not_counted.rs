//! A short hop counts nothing for wet antenna covers.

use crate::rules::prelude::*;
use crate::units::Metres;

rule! {
    /// A short hop counts nothing for wet antenna covers.
    ///
    /// Water on the covers costs some decibels whatever the length of the hop, so below a kilometre it is a large part of
    /// what rain takes. State `wet_loss` on the antennas; 1.5 dB each is a fair guess, less for covers that shed water.
    /// The loss comes off the margin while it rains.
    ///
    /// Source: no ITU method; measurements: Schleiss, Rieckermann and Berne, IEEE GRSL 10 (2013), some 2.3 dB for both
    /// ends at 38 GHz; Ostrometzky et al., IEEE TAP 66 (2018), not negligible at 73 GHz over 1 km; Fencl et al., Atmos.
    /// Meas. Tech. 13 (2020), must be corrected for in E-band. The kilometre and the 1.5 dB are common practice.
    severity: Advice,
    waivable: SERVICE,
    check: Hop(check),
}

/// Below this the covers count.
const SHORT: Metres = Metres(1000.0);

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let (a, b) = (hop.resolved.ends.a.antenna, hop.resolved.ends.b.antenna);
    let Some(slant) = hop.path.slant.get() else { return };
    if slant >= SHORT || a.wet_loss.is_some() || b.wet_loss.is_some() {
        return;
    }
    let spec = hop.resolved.hop;
    let message = format!("over {slant} nothing is counted for wet antenna covers");
    let finding = found.report(&RULE, at!(spec.ends.a.antenna), message, "no `wet_loss` on this antenna");
    finding.measured(slant, Worse::Lower).of_whole_hop();
    finding.because(at!(spec.ends.b.antenna), "nor on this one");
    finding.help("add `wet_loss: 1.5 dB` to the antennas, or what their maker states");
}
