//! A hop sends two carriers on one channel, and nothing says how far they keep apart.

use crate::rules::prelude::*;
use crate::sheet::{Cause, Reason};

rule! {
    /// A hop sends two carriers on one channel, and nothing says how far they keep apart.
    ///
    /// Rain and, on hops over 5 km, layers of clear air turn a part of each carrier into the other. How often that breaks a
    /// state follows from the cross-polar discrimination of the antennas (`cross_polar`) and from the carrier over interference that
    /// the state needs (`carrier_to_interference`). Without both the availability of the sheet leaves it out. In rain there is a
    /// method from 8 to 35 GHz alone: beyond, this is advice.
    ///
    /// Source: ITU-R P.530-18 §4 (text not seen).
    severity: Warning,
    never_off: NOT_JUDGED,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let spec = hop.resolved.hop;
    let open = |direction: &Direction<'_>| {
        let lines = direction.crossed.as_ref()?;
        let reasons = [lines.discrimination.value().err(), lines.needed.value().err(), lines.rain.value().err()];
        let missing = reasons.into_iter().flatten().next()?.clone();
        (missing.cause == Cause::Judged).then_some(missing)
    };
    let Some((direction, missing)) = hop.directions.iter().find_map(|direction| Some((direction, open(direction)?)))
    else {
        return;
    };
    let message = format!("how often its two carriers spoil each other is not judged: {}", missing.reason);
    let finding = found.report(&RULE, at!(spec.channel.polarisation), message, "two carriers on one channel");
    finding.of_whole_hop();
    match missing.reason {
        Reason::NoCrossPolar => {
            for end in hop.resolved.ends.iter() {
                let antenna = end.antenna;
                if antenna.cross_polar.is_none() {
                    finding.because(at!(antenna.id), "no `cross_polar` on this antenna");
                }
            }
            finding.help("add `cross_polar` to the antennas, by their data sheets");
        }
        Reason::NoCarrierToInterference => {
            let radio = direction.receiver.radio;
            let number = direction.objective_state().map_or(0, |state| state.number);
            finding.because(at!(radio.states[number].title), "the state that must hold");
            finding.help("add `carrier_to_interference` to the states of the radio, by its data sheet");
        }
        _ => {
            finding.at_most(Severity::Advice);
            finding.because(hop.resolved.frequency_at(direction.way), "this frequency");
            finding.help("ask for more margin than rain needs; none can be computed");
        }
    }
}
