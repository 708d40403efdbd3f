//! The other carrier is too strong even in still air.

use crate::rules::prelude::*;

rule! {
    /// The other carrier is too strong even in still air.
    ///
    /// On a dual-polarised hop each carrier hears the other through the antennas, by their cross-polar discrimination, less what a
    /// canceller takes off. If that leaves less carrier over interference than the state needs that carries the capacity asked for,
    /// the state never holds, whatever the margin over noise. Take better antennas, a canceller or a slower state.
    ///
    /// Source: the data sheets; arithmetic.
    severity: Error,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let Some(lines) = &direction.crossed else { return };
    let (Some(left), Some(state)) = (lines.in_hand.get(), direction.objective_state()) else { return };
    if left.tidy().0 >= 0.0 {
        return;
    }
    let (spec, radio) = (hop.resolved.hop, direction.receiver.radio);
    let (short, title) = (Decibels(-left.0).rounded_up(), &state.title);
    let message = format!("{}: the other carrier is {short} too strong for {title} even in still air", direction.way);
    let finding = found.report(&RULE, at!(spec.channel.polarisation), message, "two carriers on one channel");
    finding.measured(left, Worse::Lower).about(direction.way.key());
    finding.because(at!(radio.states[state.number].carrier_to_interference), "what the state needs");
    for end in [direction.sender, direction.receiver] {
        let antenna = end.antenna;
        finding.because(at!(antenna.cross_polar), "how far this antenna keeps them apart");
    }
    if radio.cross_polar_cancelling.is_some() {
        finding.because(at!(radio.cross_polar_cancelling), "what the canceller takes off");
    }
    finding.help(format!("{short} more, of antennas or canceller, would do"));
}
