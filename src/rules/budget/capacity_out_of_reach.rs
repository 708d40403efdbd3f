//! No modulation state of the radio reaches the capacity asked for in this channel.

use crate::rules::prelude::*;

rule! {
    /// No modulation state of the radio reaches the capacity asked for in this channel.
    ///
    /// Only states listed for the bandwidth of the channel count. Widen the channel, take another radio, or lower
    /// `objectives.capacity`.
    ///
    /// Source: the states on the radio's data sheet.
    severity: Error,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    if direction.objective.is_some() {
        return;
    }
    let (spec, radio, wanted) = (hop.resolved.hop, direction.receiver.radio, &hop.target.capacity);
    let bandwidth = &spec.channel.bandwidth;
    let fastest = direction.states.iter().filter_map(|state| state.lines.capacity.value.as_ref().ok());
    let fastest = fastest.max_by(|one, other| one.value.0.total_cmp(&other.value.0));
    let (message, label) = match fastest {
        Some(most) => (
            format!("{}: {most} is the most at {bandwidth}, less than {}", direction.title, wanted.given),
            "too narrow for the capacity".to_owned(),
        ),
        None => (
            format!("{}: radio `{}` has no modulation state at {bandwidth}", direction.title, radio.id),
            "not a bandwidth of this radio".to_owned(),
        ),
    };
    let finding = found.report(&RULE, at!(spec.channel.bandwidth), message, label);
    finding.because(wanted.place, format!("{} asked for here", wanted.given));
    finding.because(at!(radio.states), "the states there are");
    let enough = radio.states.iter().filter(|state| state.capacity.value >= wanted.value());
    let narrowest = enough.min_by(|one, other| one.bandwidth.value.0.total_cmp(&other.bandwidth.value.0));
    finding.help(match narrowest {
        Some(state) => format!("{} at {} gives {}", state.title, state.bandwidth, state.capacity),
        None => "no state of this radio is fast enough: take another radio or ask for less".into(),
    });
}
