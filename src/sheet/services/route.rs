//! One route of a service: its hops added up.

use super::part::{HopPart, PowerPart};
use crate::network::ResolvedService;
use crate::physics::chain::{self, Row};
use crate::physics::geodesy::{self, Position};
use crate::physics::link;
use crate::sheet::line::lines;
use crate::sheet::method::{Method, cited};
use crate::sheet::missing::Missing;
use crate::sheet::outage::Coverage;
use crate::sheet::reason::Reason;
use crate::sheet::shown::Rare;
use crate::sheet::traced::{Traced, all, read};
use crate::units::{MegabitsPerSecond, Metres, Milliseconds, Percent};

/// How outages of a row are added up.
pub(super) const ADDED: Method =
    cited("sum over the hops, an upper bound whatever falls together (Boole's inequality)");
/// How a delay is found.
pub(super) const DELAY: Method =
    cited("n s / c, n = 1.000315 (ITU-R P.453-14, from memory), and latency of the radios");

lines! {
    /// A route of a service.
    RouteLines {
        length: Metres, "s", "length antenna to antenna, all hops", "sum of the hops";
        capacity: MegabitsPerSecond, "C", "capacity, each way", "the least of the states that must hold, of both ways";
        delay: Milliseconds, "τ", "delay, one way", DELAY;
        rain: Rare, "p_R", "rain outage, all hops added", ADDED;
        rain_once: Rare, "", "rain outage, common rain counted once",
            "the worst of each run of hops whose middles all lie within the distance, added up; no promise is held against it";
        clear_air: Rare, "p_M", "outage in clear air, all hops", ADDED;
        equipment: Rare, "p_E", "outage by equipment, all ends", ADDED;
        supply: Rare, "p_S", "outage by its supply, each power point once", ADDED;
        outage: Rare, "p", "outage of the route, both directions", ADDED;
        availability: Percent, "100 − p", "availability of the route, both directions", "100 % less the outage";
    }
}

/// The hops of a route, as far as they could be evaluated.
pub(super) struct Hops<'p> {
    pub(super) parts: Vec<&'p HopPart>,
    /// What to say of those that could not.
    pub(super) lost: Option<Missing>,
}

impl Hops<'_> {
    /// A value of each.
    pub(super) fn each<T: Clone>(&self, value: impl Fn(&HopPart) -> Traced<T>) -> Traced<Vec<T>> {
        if let Some(lost) = &self.lost {
            return Traced::missing(lost.clone());
        }
        let values: Vec<Traced<T>> = self.parts.iter().map(|part| value(part)).collect();
        Traced::each(&values)
    }

    /// The points that feed it, each once.
    pub(super) fn points(&self) -> Vec<&PowerPart> {
        let mut points: Vec<&PowerPart> = Vec::new();
        for point in self.parts.iter().flat_map(|part| &part.points) {
            if point.name.is_none() || points.iter().all(|other| other.name != point.name) {
                points.push(point);
            }
        }
        points
    }

    /// What takes it down, without some of its hops and points.
    pub(super) fn row(&self, counts: impl Fn(&HopPart) -> bool, feeds: impl Fn(&PowerPart) -> bool) -> Traced<Row> {
        let own =
            Hops { parts: self.parts.iter().copied().filter(|part| counts(part)).collect(), lost: self.lost.clone() };
        let rain = own.each(|part| part.rain.clone());
        let other = own.each(|part| all((&part.clear_air, &part.equipment.a, &part.equipment.b)));
        let points: Vec<Traced<Percent>> =
            self.points().into_iter().filter(|point| feeds(point)).map(|point| point.outage.clone()).collect();
        all((&rain, &other, &Traced::each(&points))).map(|(rain, other, points)| {
            let of_hops = other.into_iter().flat_map(|(clear, a, b)| [clear, a, b]);
            Row { rain, other: chain::added(of_hops.chain(points)) }
        })
    }

    /// Where the middles of its paths are.
    fn middles(&self) -> Traced<Vec<Position>> {
        self.each(HopPart::middle)
    }

    /// What its outages count.
    pub(super) fn coverage(&self) -> Option<Coverage> {
        self.parts.iter().map(|part| part.coverage).reduce(Coverage::and)
    }

    /// The latency of its radios, and the ids of those that state none.
    pub(super) fn latency(&self) -> Traced<(Milliseconds, Vec<String>)> {
        let each = self.each(|part| {
            let [a, b] = [&part.radios.a, &part.radios.b];
            let ids = [a.id.clone(), b.id.clone()];
            all((&a.latency, &b.latency)).map(|(a, b)| ids.into_iter().zip([a, b]).collect::<Vec<_>>())
        });
        each.map(|radios| {
            let (mut sum, mut without) = (Milliseconds(0.0), Vec::new());
            for (id, latency) in radios.into_iter().flatten() {
                match latency {
                    Some(latency) => sum = sum + latency,
                    None if without.contains(&id) => {}
                    None => without.push(id),
                }
            }
            (sum, without)
        })
    }
}

/// The lines of a route.
pub(super) fn compute(resolved: &ResolvedService<'_>, hops: &Hops<'_>) -> RouteLines {
    let sum = |shares: Traced<Vec<Percent>>| shares.map(chain::added);
    let rain = hops.each(|part| part.rain.clone());
    let row = hops.row(|_| true, |_| true);
    let points: Vec<Traced<Percent>> = hops.points().into_iter().map(|point| point.outage.clone()).collect();
    let ends = hops.each(|part| all((&part.equipment.a, &part.equipment.b)));
    let capacities = hops.each(|part| part.capacity.clone());
    let outage = row.map(|row| row.outage());
    RouteLines {
        length: slants(hops).line(),
        capacity: least(&capacities).line(),
        delay: delay(hops).line().called(delay_words(hops)),
        rain_once: once(resolved, hops, &rain).map(Rare).line(),
        rain: sum(rain).map(Rare).line(),
        clear_air: sum(hops.each(|part| part.clear_air.clone())).map(Rare).line(),
        equipment: ends.map(|ends| chain::added(ends.into_iter().flat_map(|(a, b)| [a, b]))).map(Rare).line(),
        supply: sum(Traced::each(&points)).map(Rare).line(),
        availability: outage.map(link::availability).line(),
        outage: outage.map(Rare).line(),
    }
}

fn slants(hops: &Hops<'_>) -> Traced<Metres> {
    let slants = hops.each(|part| part.slant.clone());
    slants.map(|slants| slants.into_iter().fold(Metres(0.0), |sum, slant| sum + slant))
}

/// How late it arrives.
pub(super) fn delay(hops: &Hops<'_>) -> Traced<Milliseconds> {
    all((&slants(hops), &hops.latency())).map(|(length, (latency, _))| chain::propagation(length) + latency)
}

/// What the delay may be called, by what is counted in it.
pub(super) fn delay_words(hops: &Hops<'_>) -> &'static str {
    match hops.latency().value() {
        Ok((_, without)) if without.is_empty() => "delay, one way",
        Ok((latency, _)) if latency.0 > 0.0 => "delay of propagation and some of the radios, one way",
        _ => "propagation delay, one way",
    }
}

/// The least of some rates; there is none of no hops.
pub(super) fn least(rates: &Traced<Vec<MegabitsPerSecond>>) -> Traced<MegabitsPerSecond> {
    rates.judge(|rates| {
        rates.into_iter().reduce(|one, other| if other < one { other } else { one }).ok_or(Reason::RouteBroken)
    })
}

/// The distance within which rain is common.
pub(super) fn common_within(resolved: &ResolvedService<'_>) -> Traced<Metres> {
    let service = resolved.service;
    read!(service.rain_common_within).stated(Reason::NoCommonRain)
}

fn once(resolved: &ResolvedService<'_>, hops: &Hops<'_>, rain: &Traced<Vec<Percent>>) -> Traced<Percent> {
    all((rain, &hops.middles(), &common_within(resolved))).map(|(rain, middles, within)| {
        let near = |one: usize, other: usize| {
            geodesy::inverse(middles[one], middles[other]).map_or(Metres(0.0), |found| found.distance) <= within
        };
        chain::rain_counted_once(&rain, near)
    })
}
