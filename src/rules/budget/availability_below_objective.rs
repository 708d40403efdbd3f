//! Rain takes the hop down for longer than its availability allows.

use crate::rules::prelude::*;

rule! {
    /// Rain takes the hop down for longer than its availability allows.
    ///
    /// The outage is that of the worse direction, in the most robust modulation state that reaches the capacity asked for:
    /// the same rain falls on both directions, so they fail together. Failures of equipment and power are not counted.
    ///
    /// Shorten the hop, raise the gain or the power, use a lower frequency or a narrower channel; or lower the objective and
    /// say why. The help gives the fade margin that would do, and each single change that was tried and does.
    ///
    /// Source: ITU-R P.530-18 §2.4.1 with P.838-3, for 0.001 % to 1 % of an average year. Where the model only says
    /// `not more than 0.001 %`, 99.999 % is what is promised.
    severity: Error,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let Some(availability) = hop.service.availability.get() else { return };
    let wanted = &hop.target.availability;
    if availability >= wanted.value() {
        return;
    }
    let outage = |direction: &Direction<'_>| {
        direction.objective_state().and_then(|state| state.lines.outage.get()).map_or(0.0, |outage| outage.at_most().0)
    };
    let Both { a, b } = hop.directions.each_ref();
    let direction = if outage(b) > outage(a) { b } else { a };
    let (Some(state), end) = (direction.objective_state(), direction.sender.end) else { return };
    let (has, wants, _) = apart(availability, wanted.value());
    let minutes = hop.service.minutes.get().unwrap_or_default();
    let message =
        format!("availability is {has}, below {wants}: rain outage of {minutes} a year, worst {}", direction.way);
    let margin = state.lines.rain_margin.get().unwrap_or_default();
    let label = format!("leaves a margin of {margin} for rain in {}", state.title);
    let finding = found.report(&RULE, at!(end.antenna), message, label);
    finding.measured(availability, Worse::Lower).of_whole_hop();
    finding.because(wanted.place, format!("{} asked for here", wanted.given));
    if let (Ok(rain), Some(place)) = (hop.path.rain_rate.value(), hop.path.rain_rate.first_source()) {
        finding.because(place, format!("{rain} fades it by {}", line(&direction.lines.rain_fade)));
    }
    if let Some(needed) = direction.lines.objective_fade.get() {
        // The fade to ride out, and the wetting on top of it.
        let wet = direction.lines.wet_loss.get().unwrap_or_default();
        let (more, needed) = ((needed - margin).rounded_up(), (needed + wet).rounded_up());
        let ways = any_of(&hop.mends.availability, "no single change does: take several, or another radio");
        finding.help(format!("{more} more margin would do, {needed} in all; {ways}"));
    }
}
