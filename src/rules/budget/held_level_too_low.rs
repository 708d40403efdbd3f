//! Power control holds a level at which the capacity asked for does not get through.

use crate::rules::prelude::*;

rule! {
    /// Power control holds a level at which the capacity asked for does not get through.
    ///
    /// The level it holds in a clear sky (`held_level` of the end that sends) is below what the state needs that carries the
    /// capacity asked for, so the hop runs in a slower state while the sky is clear and power is to spare. Some radios give power
    /// back before they leave a state; this is not counted on. Let it hold a higher level.
    ///
    /// Source: the thresholds on the data sheet; arithmetic.
    severity: Error,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(_: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let end = direction.sender.end;
    let (Some(held), Some(left)) = (&end.held_level, direction.levels.held_in_hand.get()) else { return };
    let Some(state) = direction.objective_state() else { return };
    // A hop that has no margin by full power either is told so by other rules.
    let lacks_by_itself = state.lines.margin.get().is_none_or(|margin| margin.0 < 0.0);
    if left.tidy().0 >= 0.0 || lacks_by_itself {
        return;
    }
    let radio = direction.receiver.radio;
    let (short, title) = (Decibels(-left.0).rounded_up(), &state.title);
    let message = format!("{}: power control holds {held}, {short} too little for {title}", direction.way);
    let finding = found.report(&RULE, at!(end.held_level), message, "held at the far receiver");
    finding.measured(left, Worse::Lower);
    finding.because(at!(radio.states[state.number].threshold), "the threshold of that state");
    finding.help(format!("hold {} or more", (held.value + short).rounded_up()));
}
