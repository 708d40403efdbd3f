//! The receiver has less fade margin than is asked for.

use crate::rules::prelude::*;

rule! {
    /// The receiver has less fade margin than is asked for.
    ///
    /// The margin is the clear-sky level less the receiver threshold of the most robust modulation state that reaches the
    /// capacity asked for. It is compared with `objectives.fade_margin` of the hop or its network, each direction for
    /// itself. Without that objective the rule is silent and only the availability counts.
    ///
    /// Give the hop more power, more antenna gain or a narrower channel; or lower the objective and say why. The help gives
    /// each single change that was tried and does; `hopwright alternatives HOP` tries them together.
    ///
    /// Source of the levels: ITU-R P.525-4, P.676-13. The objective is the network's own.
    severity: Error,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let (Some(wanted), Some(state)) = (&hop.target.fade_margin, direction.objective_state()) else { return };
    let Some(margin) = state.lines.margin.get() else { return };
    if margin >= wanted.value() {
        return;
    }
    let (end, radio, receiver) = (direction.sender.end, direction.sender.radio, direction.receiver.radio);
    let (has, wants, by) = apart(margin, wanted.value());
    let i = state.number;
    let lost = lost_to_interference(direction);
    let message = format!("{}: fade margin in {} is {has}, {by} short of {wants}{lost}", direction.way, state.title);
    let label = format!("{} arrives at the far end", state.lines.level.get().unwrap_or_default());
    let finding = found.report(&RULE, at!(end.transmit_power), message, label);
    finding.measured(margin, Worse::Lower);
    finding.because(wanted.place, format!("{} required here", wanted.given));
    finding.because(at!(receiver.states[i].threshold), format!("threshold of {}", state.title));
    let short = (wanted.value() - margin).rounded_up();
    let lawful = hop.licence[direction.way].lines.highest_power.get();
    let most = radio.transmit_power.max.value;
    let headroom = lawful.filter(|lawful| *lawful < most).unwrap_or(most) - end.transmit_power.value;
    let seek = format!("`hopwright alternatives {}` tries several changes at once", hop.id());
    let part = headroom.0 > 0.0 && headroom < short;
    let some = if part { format!("{headroom} of it could come from power; {seek}") } else { seek };
    let ways = any_of(&hop.mends.margin, &some);
    finding.help(format!("{short} more would do; {ways}"));
}
