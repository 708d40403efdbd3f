//! Interference is so strong that the capacity asked for does not get through in a clear sky.

use super::{is_twin, mends, name_aggressors};
use crate::rules::prelude::*;

rule! {
    /// Interference is so strong that the capacity asked for does not get through in a clear sky.
    ///
    /// Carrier over interference is less than the state needs that carries the capacity asked for: as the radio states it
    /// (`carrier_to_interference`), else its threshold over its noise, for interference then counts as noise. No power of this hop
    /// alone may be enough to help; one of the two hops has to change.
    ///
    /// Source: powers of independent signals add; patterns of ITU-R F.699-8 where none is measured.
    severity: Error,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let (end, heard) = (direction.receiver.end, &hop.heard[direction.way]);
    let lines = &direction.heard;
    let known = (lines.carrier.get(), lines.needed.get(), lines.carrier_in_hand.get());
    let (Some(carrier), Some(needed), Some(left)) = known else { return };
    let twin = heard.aggressors.first().is_some_and(|strongest| is_twin(strongest, hop, direction));
    if left.tidy().0 >= 0.0 || twin {
        return;
    }
    let state = direction.objective_state().map_or_else(String::new, |state| format!("{} ", state.title));
    let by = heard
        .aggressors
        .first()
        .map_or_else(String::new, |strongest| format!(": most of it from {}", strongest.called));
    let message = format!(
        "end {} hears its partner only {carrier} over other senders, and {state}needs {needed}{by}",
        direction.receiver.name,
    );
    let finding = found.report(&RULE, at!(end.radio), message, "this receiver");
    finding.measured(left, Worse::Lower);
    name_aggressors(finding, hop, direction);
    finding.help(mends(hop, direction));
}
