//! The two radios have no modulation state in common in this channel.

use crate::rules::prelude::*;

rule! {
    /// The two radios have no modulation state in common in this channel.
    ///
    /// Both ends must run the same bandwidth and modulation, while aligning as well as later. Radios of two models may share
    /// a band and still not understand each other. States are compared by their titles at the bandwidth of the channel.
    ///
    /// Source: the states on the two data sheets.
    severity: Error,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let (a, b) = (&hop.resolved.ends.a, &hop.resolved.ends.b);
    let (one, other) = (a.radio, b.radio);
    if one.at == other.at {
        return;
    }
    let bandwidth = &hop.resolved.hop.channel.bandwidth;
    let here = |radio: &crate::spec::Radio| -> Vec<String> {
        let states = radio.states.iter().filter(|state| state.bandwidth.value == bandwidth.value);
        states.map(|state| state.title.to_string()).collect()
    };
    let (of_a, of_b) = (here(one), here(other));
    // Without any state there is another rule that speaks.
    if of_a.is_empty() || of_b.is_empty() || of_a.iter().any(|title| of_b.contains(title)) {
        return;
    }
    let spec = hop.resolved.hop;
    let message = format!("radios `{}` and `{}` share no modulation state at {bandwidth}", one.id, other.id);
    let finding = found.report(&RULE, at!(spec.channel.bandwidth), message, "no state of one is a state of the other");
    finding.because(at!(one.states), format!("end a: {}", of_a.join(", ")));
    finding.because(at!(other.states), format!("end b: {}", of_b.join(", ")));
    finding.help("take radios of one model, or a bandwidth at which both have the same state");
}
