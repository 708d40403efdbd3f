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
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let mut named = Vec::new();
    for direction in hop.directions.iter() {
        let radio = direction.receiver.radio;
        // Of one model at both ends there is one thing to say.
        if direction.objective().is_none() && !named.contains(&radio.at) {
            named.push(radio.at);
            report(hop, direction, found);
        }
    }
}

fn report(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let (spec, radio, wanted) = (hop.resolved.hop, direction.receiver.radio, &hop.target.capacity);
    let bandwidth = &spec.channel.bandwidth;
    let fastest = direction.states.iter().filter_map(|state| state.lines.capacity.value().ok());
    let fastest = fastest.max_by(|one, other| one.value.0.total_cmp(&other.value.0));
    let (message, label) = match fastest {
        Some(most) => (
            format!("{most} is the most of radio `{}` at {bandwidth}, less than {}", radio.id, wanted.given),
            "too narrow for the capacity",
        ),
        None => {
            (format!("radio `{}` has no modulation state at {bandwidth}", radio.id), "not a bandwidth of this radio")
        }
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
