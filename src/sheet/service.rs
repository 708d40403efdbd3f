//! What both directions of a hop give together.

use super::direction::Direction;
use super::line::lines;
use super::method::cited;
use super::path::WORST_MONTH;
use super::target::Target;
use super::traced::all;
use crate::physics::link;
use crate::physics::rain_outage::Outage;
use crate::physics::worst_month::MonthOutage;
use crate::spec::Both;
use crate::units::{Minutes, Percent};

lines! {
    /// What both directions give together, at the capacity asked for.
    ServiceLines {
        outage: Outage, "p", "rain outage, the worse direction",
            cited("ITU-R P.530-18 §2.4.1 and P.838-3; same rain in both directions");
        availability: Percent, "100 − p", "availability, both directions",
            "100 % less the rain outage; equipment failure not counted";
        in_hand: Percent, "", "availability in hand", "availability less the one asked for";
        minutes: Minutes, "", "outage in an average year",
            "365 days";
        worst_month: MonthOutage, "p_w", "rain outage in the worst month, the worse direction", WORST_MONTH;
        worst_month_availability: Percent, "100 − p_w", "availability in the worst month, both directions", WORST_MONTH;
    }
}

pub(super) fn compute(directions: &Both<Direction<'_>>, target: &Target) -> ServiceLines {
    let outages = directions.each_ref().map(Direction::objective_outage);
    let outage = all((&outages.a, &outages.b)).map(|(one, other)| link::two_way(one, other));
    let availability = outage.map(|outage| link::availability(outage.at_most()));
    let worst = outage.map(MonthOutage::of);
    ServiceLines {
        in_hand: all((&availability, &target.availability)).map(|(has, wanted)| has - wanted).line(),
        minutes: outage.map(|outage| link::minutes_per_year(outage.at_most())).line(),
        worst_month_availability: worst.map(|worst| link::availability(worst.at_most())).line(),
        outage: outage.line(),
        availability: availability.line(),
        worst_month: worst.line(),
    }
}
