//! The hop is down for longer than its availability allows.

use crate::rules::prelude::*;
use crate::sheet::{Line, Rare, Saying, Shown};
use crate::spec::Period;
use crate::units::Percent;

rule! {
    /// The hop is down for longer than its availability allows.
    ///
    /// Counted are rain and wet snow, multipath fading, failures of equipment and of its supply, as far as the network gives
    /// the numbers; what it leaves out stands on the sheet and on the page, and then the figure is called rain availability or
    /// propagation availability. All is taken in the most robust modulation state that reaches the capacity asked for. The same
    /// rain falls on both directions, so of rain the worse one counts; multipath fades them apart and is added up.
    /// `objectives.period` and `objectives.directions` say which time and which directions are meant.
    ///
    /// Shorten the hop, raise the gain or the power, use a lower frequency or a narrower channel; or lower the objective and
    /// say why. The help gives each single change that was tried and does; `hopwright alternatives HOP` tries them together.
    ///
    /// Source: ITU-R P.530-18 §2.3 and §2.4 with P.838-3, P.841-6 for the worst month. Where the model only says `not more than
    /// 0.001 %`, that is what is counted.
    severity: Error,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let Some(availability) = hop.service.counted.get() else { return };
    let wanted = &hop.target.availability;
    if availability >= wanted.value() {
        return;
    }
    let outage = |direction: &Direction<'_>| {
        direction.objective_state().and_then(|state| state.lines.outage.get()).map_or(0.0, |outage| outage.most.0)
    };
    let Both { a, b } = hop.directions.each_ref();
    let direction = if outage(b) > outage(a) { b } else { a };
    let (Some(state), end) = (direction.objective_state(), direction.sender.end) else { return };
    let (has, wants, _) = apart(availability, wanted.value());
    let name = direction.availability_words();
    let message =
        format!("{name} is {has}, below {wants}: {}; worst {}{}", causes(hop), direction.way, not_counted(hop));
    let margin = state.lines.margin.get().unwrap_or_default();
    let label = format!("leaves a margin of {margin} in {}{}", state.title, lost_to_interference(direction));
    let finding = found.report(&RULE, at!(end.antenna), message, label);
    finding.measured(availability, Worse::Lower).of_whole_hop();
    finding.because(wanted.place, format!("{} required here", wanted.given));
    if let (Ok(rain), Some(place)) = (hop.path.rain_rate.value(), hop.path.rain_rate.first_source()) {
        let falls = if hop.path.snow_factor.get().is_some() { "with wet snow " } else { "" };
        finding.because(place, format!("{rain} {falls}fades it by {}", line(&direction.lines.rain_fade)));
    }
    finding.help(help(hop));
}

/// What would fix it. Where equipment and its supply take all that is allowed, no radio and no antenna does.
fn help(hop: &HopSheet<'_>) -> String {
    let (service, allowed) = (&hop.service, Percent(100.0) - hop.target.availability.value());
    let share = |line: &Line<Rare>| line.get().map_or(Percent(0.0), |share| share.0);
    let terminals = share(&service.equipment) + share(&service.supply);
    if terminals >= allowed {
        return format!(
            "equipment and its supply alone take {terminals} of the {} allowed, whatever the radios do: a shorter \
             `mean_time_to_restore`, a longer `autonomy` of the power points, or equipment that fails less often",
            allowed.tidy()
        );
    }
    let mend = &hop.mends.availability;
    let seek = format!("no single change does: `hopwright alternatives {}` tries several at once", hop.id());
    let ways = any_of(mend, &seek);
    match mend.level {
        Some(more) => format!("{more} more margin each way would do; {ways}"),
        None => ways,
    }
}

/// What takes how much of the time that the objective speaks of, cause by cause.
fn causes(hop: &HopSheet<'_>) -> String {
    fn of<T: Shown>(words: &str, outage: &Line<T>) -> Option<String> {
        let outage = outage.value().ok()?;
        let nothing = outage.number().is_some_and(|(number, _)| number <= 0.0);
        (!nothing).then(|| format!("{words} {}", outage.told()))
    }
    let service = &hop.service;
    let crossing = "crossing in rain, of which the larger counts,";
    let (list, time) = match hop.target.period() {
        Period::AverageYear => (
            [
                of("rain", &service.rain_outage),
                of("multipath", &service.multipath),
                of(crossing, &service.crossing_rain),
                of("crossing in clear air", &service.crossing_clear_air),
            ],
            format!("of the year, {} in all", service.minutes.get().unwrap_or_default()),
        ),
        Period::WorstMonth => (
            [
                of("rain", &service.rain_worst_month),
                of("multipath", &service.multipath_worst_month),
                of(crossing, &service.crossing_rain_worst_month),
                of("crossing in clear air", &service.crossing_worst_month),
            ],
            "of the worst month".to_owned(),
        ),
    };
    let terminals = [of("equipment", &service.equipment), of("supply", &service.supply)];
    let list: Vec<String> = list.into_iter().chain(terminals).flatten().collect();
    format!("{} {time}", list.join(", "))
}

/// What is not counted, if anything is not.
fn not_counted(hop: &HopSheet<'_>) -> String {
    let left = hop.service.left_out.value().ok().filter(|left| *left != &Saying::Never);
    left.map(|left| format!("; not counted: {left}")).unwrap_or_default()
}
