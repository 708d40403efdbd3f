//! What both directions of a hop give together, and how that stands to what is asked for.

use super::crossed;
use super::direction::{Direction, Luck, Means};
use super::line::lines;
use super::method::cited;
use super::missing::Missing;
use super::outage::{Causes, Coverage};
use super::path::WORST_MONTH;
use super::reason::Reason;
use super::saying::Saying;
use super::shown::{Part, Rare};
use super::states::{MULTIPATH, RAIN_OUTAGE, TOGETHER, TOGETHER_WORST_MONTH};
use super::traced::{Traced, all};
use crate::physics::link;
use crate::physics::rain_outage::Outage;
use crate::physics::share::Share;
use crate::physics::worst_month::MonthOutage;
use crate::spec::{Both, Directions, Period};
use crate::units::{Minutes, Percent};

lines! {
    /// What both directions give together, at the capacity asked for.
    ServiceLines {
        rain_outage: Outage, "p_R", "rain outage, the worse direction", RAIN_OUTAGE;
        multipath: Rare, "p_M", "multipath outage, both directions", MULTIPATH;
        crossing_rain: Outage, "P_XPR", "crossing outage in rain, the worse direction", crossed::RAIN;
        crossing_clear_air: Rare, "", "crossing outage in clear air, both directions", crossed::CLEAR_AIR_YEAR;
        crossing_rain_worst_month: MonthOutage, "", "crossing outage in rain in the worst month, the worse direction", WORST_MONTH;
        crossing_worst_month: Rare, "P_XP", "crossing outage in clear air in the worst month, both directions",
            crossed::CLEAR_AIR;
        equipment: Rare, "p_E", "outage by equipment, both ends",
            "MTTR / (MTBF + MTTR) of each end, independent of each other";
        supply: Rare, "p_S", "outage by its supply, both ends",
            "failures that outlast the autonomy, exponential in length, of each power point in use";
        outage: Share, "p", "outage in the average year, both directions", TOGETHER;
        left_out: Saying, "", "not counted in it", "what is not given";
        minutes: Minutes, "", "outage in minutes a year", "365 days";
        availability: Percent, "100 − p", "availability, both directions", "100 % less the outage in the average year";
        rain_worst_month: MonthOutage, "", "rain outage in the worst month, the worse direction", WORST_MONTH;
        multipath_worst_month: Rare, "", "multipath outage in the worst month, both directions",
            cited("ITU-R P.530-18 §2.3.2 at the fade margin, flat fading");
        worst_month: Share, "p_w", "outage in the worst month, both directions", TOGETHER_WORST_MONTH;
        worst_month_availability: Percent, "100 − p_w", "availability in the worst month, both directions",
            "100 % less the outage in the worst month";
        counted: Percent, "", "availability as the objective counts it",
            "of the year or its worst month, of both directions together or of the worse one";
        in_hand: Percent, "", "availability in hand", "as the objective counts it less the one asked for";
        unused: Part, "", "part of the allowed outage that is left", "availability in hand / outage that is allowed";
        counted_least: Percent, "", "the same with all that has a tolerance at its worst",
            "power, gains, thresholds and rain rate off together by all that is stated; no claim of likelihood";
        left_at_worst: Percent, "", "what is left of it at its worst", "as at its worst less the one asked for";
        counted_most: Percent, "", "the same with all that has a tolerance at its best", "as at its worst";
    }
}

pub(super) fn compute(directions: &Both<Direction<'_>>, means: &Means<'_>) -> ServiceLines {
    let (target, terminals) = (means.target, means.terminals);
    let each = directions.each_ref().map(Direction::objective_causes);
    let causes = Causes::together(&each);
    let coverage = Coverage::of(&means.path.snow_factor, &causes, terminals);
    let (year, month) = (causes.year(terminals), causes.worst_month(terminals));
    let available = |outage: &Traced<Share>| outage.map(|outage| link::availability(outage.most));
    let counted = available(&counted_outage(&each, means));
    let in_hand = all((&counted, &target.availability)).map(|(has, wanted)| has - wanted);
    let unused = all((&in_hand, &target.availability)).check(|(left, wanted)| {
        let allowed = Percent(100.0) - wanted;
        if allowed.0 > 0.0 { Ok(Part(Percent(100.0 * left.0 / allowed.0))) } else { Err(Reason::Endless) }
    });
    let within = |luck: Luck| {
        let each = directions.each_ref().map(|direction| direction.causes_within(luck));
        match each.all(|causes| causes) {
            Some(each) => available(&counted_outage(&each, means)),
            None => Traced::missing(Missing::judged(Reason::NothingOff, target.capacity.place)),
        }
    };
    let crossing = crossed::of_hop(causes.crossing.as_ref(), target.capacity.place);
    let worst = within(Luck::Worst);
    ServiceLines {
        left_out: causes.rain.map(|_| coverage.left_out()).line(),
        minutes: year.map(|outage| link::minutes_per_year(outage.most)).line(),
        availability: available(&year).line().called(coverage.of_hop()),
        worst_month_availability: available(&month).line().called(coverage.of_hop_worst_month()),
        rain_worst_month: causes.rain_worst_month().line(),
        rain_outage: causes.rain.line(),
        multipath: causes.multipath.map(Rare).line(),
        multipath_worst_month: causes.multipath_worst_month.map(Rare).line(),
        crossing_rain_worst_month: crossing.rain.map(MonthOutage::of).line(),
        crossing_rain: crossing.rain.line(),
        crossing_clear_air: crossing.clear_air.map(Rare).line(),
        crossing_worst_month: crossing.clear_air_worst_month.map(Rare).line(),
        equipment: terminals.equipment.map(Rare).line(),
        supply: terminals.supply.map(Rare).line(),
        outage: year.line(),
        worst_month: month.line(),
        counted: counted.line(),
        in_hand: in_hand.line(),
        unused: unused.line(),
        left_at_worst: all((&worst, &target.availability)).map(|(has, wanted)| has - wanted).line(),
        counted_least: worst.line(),
        counted_most: within(Luck::Best).line(),
    }
}

/// The outage that an objective speaks of.
pub(super) fn counted_outage(each: &Both<Causes>, means: &Means<'_>) -> Traced<Share> {
    let choice = all((&means.target.period, &means.target.together));
    choice.and_then(|(period, directions)| {
        let outage = |causes: &Causes| match period {
            Period::AverageYear => causes.year(means.terminals),
            Period::WorstMonth => causes.worst_month(means.terminals),
        };
        match directions {
            Directions::Together => outage(&Causes::together(each)),
            Directions::Each => {
                let both = each.each_ref().map(outage);
                all((&both.a, &both.b)).map(|(one, other)| one.or_larger(other))
            }
        }
    })
}
