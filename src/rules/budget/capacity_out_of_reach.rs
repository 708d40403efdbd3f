//! No modulation state of the radio reaches the capacity asked for in this channel.

use crate::rules::prelude::*;
use crate::spec::State;
use crate::units::MegabitsPerSecond;

rule! {
    /// No modulation state of the radio reaches the capacity asked for in this channel.
    ///
    /// Only states listed for the bandwidth of the channel count. Widen the channel, take another radio, or lower
    /// `objectives.capacity`.
    ///
    /// Source: the states on the radio's data sheet.
    severity: Error,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    // What a broken field leaves unknown is told where it is broken.
    let known = |direction: &&Direction<'_>| direction.states.iter().all(|state| state.lines.capacity.value().is_ok());
    let short = hop.directions.iter().filter(|direction| direction.objective().is_none()).filter(known);
    // One hop, one thing to say: by the slower of the two radios.
    let slower = short.map(|direction| (direction, fastest(direction))).min_by(|(_, one), (_, other)| {
        let rate = |most: &Option<MegabitsPerSecond>| most.map_or(0.0, |most| most.0);
        rate(one).total_cmp(&rate(other))
    });
    if let Some((direction, fastest)) = slower {
        report(hop, direction, fastest, found);
    }
}

/// The most a direction carries in this channel.
fn fastest(direction: &Direction<'_>) -> Option<MegabitsPerSecond> {
    let rates = direction.states.iter().filter_map(|state| Some(state.lines.capacity.value().ok()?.value));
    rates.max_by(|one, other| one.0.total_cmp(&other.0))
}

fn report(hop: &HopSheet<'_>, direction: &Direction<'_>, fastest: Option<MegabitsPerSecond>, found: &mut Findings) {
    let (spec, radio, wanted) = (hop.resolved.hop, direction.receiver.radio, &hop.target.capacity);
    let bandwidth = &spec.channel.bandwidth;
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
    finding.of_whole_hop();
    if let Some(most) = fastest {
        finding.measured(most, Worse::Lower);
    }
    finding.because(wanted.place, format!("{} required here", wanted.given));
    finding.because(at!(radio.states), "the states there are");
    let carries = |state: &State| spec.channel.polarisation.carries(state.capacity.value);
    let enough = radio.states.iter().filter(|state| carries(state) >= wanted.value());
    let narrowest = enough.min_by(|one, other| one.bandwidth.value.0.total_cmp(&other.bandwidth.value.0));
    finding.help(match narrowest {
        Some(state) if spec.channel.polarisation.carriers() > 1 => {
            format!("{} at {} gives {}, both carriers together", state.title, state.bandwidth, carries(state))
        }
        Some(state) => format!("{} at {} gives {}", state.title, state.bandwidth, state.capacity),
        None => "no state of this radio is fast enough: take another radio or ask for less".into(),
    });
}
