//! The sheet of a service: what its hops come to together, from end to end.

mod part;
mod route;

use std::collections::{HashMap, HashSet};

use super::key::SectionKey;
use super::line::{Section, lines};
use super::method::{Method, cited};
use super::missing::Missing;
use super::outage::Coverage;
use super::reason::Reason;
use super::saying::Saying;
use super::shown::Rare;
use super::title::Title;
use super::traced::{Traced, all};
use super::wanted::{Wanted, asked};
use crate::at;
use crate::network::{ResolvedService, RouteHop};
use crate::physics::chain::{self, Row};
use crate::physics::geodesy::Position;
use crate::physics::link;
use crate::place::{DocumentId, Place};
use crate::units::{MegabitsPerSecond, Metres, Milliseconds, Minutes, Percent};

pub use part::HopPart;
pub use route::RouteLines;

use route::{ADDED, DELAY, Hops};

/// What hops bring to services, by their documents.
pub type Parts = HashMap<DocumentId, HopPart>;

/// How the outage of two routes is found.
const PROTECTED: Method = cited(
    "what both routes share, rain on both at once (common within the distance, else independent), and all else of both at once \
     as independent; Boole's inequality, bound of Fréchet; switching is taken as perfect",
);

lines! {
    /// A service from end to end.
    ServicePathLines {
        capacity: MegabitsPerSecond, "C", "capacity, each way", "the least of the routes";
        delay: Milliseconds, "τ", "delay, one way", DELAY;
        delay_left_out: Saying, "", "not counted in the delay", "what is not given";
        shared: Rare, "", "outage of what both routes share", ADDED;
        rain_at_once: Rare, "", "rain on both routes at once", PROTECTED;
        outage: Rare, "p", "outage in the average year, both directions", ADDED;
        left_out: Saying, "", "not counted in it", "what is not given";
        minutes: Minutes, "", "outage in minutes a year", "365 days";
        availability: Percent, "100 − p", "availability, both directions", "100 % less the outage in the average year";
        availability_once: Percent, "", "availability, common rain counted once",
            "as above with rain counted once where it is common; no promise is held against it";
    }
}

/// Everything computed for one service.
#[derive(Debug)]
pub struct ServiceSheet<'n> {
    /// What was read.
    pub resolved: &'n ResolvedService<'n>,
    /// What it must reach, where anything is asked for.
    pub objectives: ServiceTarget,
    /// From end to end.
    pub lines: ServicePathLines,
    /// Each route.
    pub routes: Vec<RouteLines>,
    /// The radios of its routes that state no delay, and where they would.
    pub without_latency: Vec<(String, Place)>,
    /// What each hop of each route takes of the year, the greatest first, with its document.
    pub worst: Vec<(String, DocumentId, Percent)>,
    /// The hops that carry no more than the service, with their documents.
    pub weakest: Vec<(String, DocumentId)>,
}

/// What a service must reach.
#[derive(Debug, Clone)]
pub struct ServiceTarget {
    /// Share of the average year.
    pub availability: Option<Wanted<Percent>>,
    /// Payload rate, each way.
    pub capacity: Option<Wanted<MegabitsPerSecond>>,
    /// Longest delay.
    pub delay: Option<Wanted<Milliseconds>>,
}

impl<'n> ServiceSheet<'n> {
    /// Computes the sheet of a service out of what its hops bring; a hop that is not among them could not be evaluated.
    #[must_use]
    pub fn compute(resolved: &'n ResolvedService<'n>, parts: &Parts) -> Self {
        let service = resolved.service;
        let hops: Vec<Hops<'_>> = (0..resolved.routes.len()).map(|number| hops(resolved, number, parts)).collect();
        Self {
            resolved,
            objectives: ServiceTarget {
                availability: asked!(service.objectives.availability).wanted(),
                capacity: asked!(service.objectives.capacity).wanted(),
                delay: asked!(service.objectives.delay).wanted(),
            },
            lines: together(resolved, &hops),
            routes: hops.iter().map(|hops| route::compute(resolved, hops)).collect(),
            without_latency: without_latency(&hops),
            worst: worst(&hops),
            weakest: weakest(&hops),
        }
    }

    /// Its id.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.resolved.service.id
    }

    /// Whether a route does not join, of which a rule of its own speaks.
    #[must_use]
    pub fn is_broken(&self) -> bool {
        let routes = &self.resolved.routes;
        routes.is_empty() || routes.len() > MOST_ROUTES || routes.iter().any(|route| route.breaks.is_some())
    }

    /// Its lines, in the order they are printed.
    #[must_use]
    pub fn sections(&self) -> Vec<Section> {
        let mut sections = vec![self.lines.section(SectionKey::EndToEnd, Title::EndToEnd)];
        for (number, (lines, route)) in self.routes.iter().zip(&self.resolved.routes).enumerate() {
            let hops: Vec<&str> = route.ids().collect();
            let title = Title::Route { number: number + 1, hops: hops.join(", ").into() };
            sections.push(lines.section(SectionKey::Route(number), title));
        }
        sections
    }
}

/// The most routes a service has: a working one and one that stands in for it.
pub const MOST_ROUTES: usize = 2;

/// The hops of a route with what they bring; what is to be said where one brings nothing.
fn hops<'p>(resolved: &ResolvedService<'_>, i: usize, parts: &'p Parts) -> Hops<'p> {
    let (service, route) = (resolved.service, &resolved.routes[i]);
    let mut found = Hops { parts: Vec::new(), lost: None };
    if route.breaks.is_some() {
        found.lost = Some(Missing::judged(Reason::RouteBroken, at!(service.routes[i])));
        return found;
    }
    for (j, hop) in route.hops.iter().enumerate() {
        let id = &*service.routes[i][j].0;
        let part = match hop {
            RouteHop::Hop(hop, _) => parts.get(&hop.at),
            RouteHop::Broken(_) => None,
        };
        if let Some(part) = part {
            found.parts.push(part);
        } else {
            let reason = Reason::HopNotEvaluated { hop: id.into() };
            found.lost.get_or_insert_with(|| Missing::new(reason, at!(service.routes[i][j])));
        }
    }
    found
}

fn together(resolved: &ResolvedService<'_>, hops: &[Hops<'_>]) -> ServicePathLines {
    let service = resolved.service;
    let one_route = || Missing::judged(Reason::OneRoute, at!(service.routes));
    let capacities: Vec<Traced<MegabitsPerSecond>> =
        hops.iter().map(|hops| route::least(&hops.each(|part| part.capacity.clone()))).collect();
    let delays: Vec<Traced<Milliseconds>> = hops.iter().map(route::delay).collect();
    let latest = Traced::each(&delays).judge(|delays| {
        delays.into_iter().reduce(|one, other| if other > one { other } else { one }).ok_or(Reason::RouteBroken)
    });
    let coverage = hops.iter().filter_map(Hops::coverage).reduce(Coverage::and);
    let rows: Vec<Traced<Row>> = hops.iter().map(|hops| hops.row(|_| true, |_| true)).collect();
    let (outage, shared, rain_at_once) = if let [one, other] = hops {
        Pair { one, other, resolved }.outages()
    } else {
        let outage = Traced::each(&rows).judge(|rows| rows.first().map(Row::outage).ok_or(Reason::RouteBroken));
        (outage, Traced::missing(one_route()), Traced::missing(one_route()))
    };
    let once = if let [only] = hops {
        only_once(resolved, only)
    } else {
        Traced::missing(Missing::judged(Reason::TwoRoutes, at!(service.routes)))
    };
    let delay_line = latest.line().called(delay_words(hops));
    let outage_line = outage.map(Rare).line();
    ServicePathLines {
        capacity: route::least(&Traced::each(&capacities)).line(),
        delay: delay_line,
        delay_left_out: delay_left_out(hops).line(),
        shared: shared.map(Rare).line(),
        rain_at_once: rain_at_once.map(Rare).line(),
        outage: if hops.len() == MOST_ROUTES { outage.map(Rare).by(PROTECTED) } else { outage_line },
        left_out: outage.map(|_| coverage.map_or(Saying::Never, Coverage::left_out)).line(),
        minutes: outage.map(link::minutes_per_year).line(),
        availability: outage
            .map(link::availability)
            .line()
            .called(coverage.map_or("availability, both directions", Coverage::of_hop)),
        availability_once: once.map(link::availability).line(),
    }
}

/// The outage of a single route with common rain counted once.
fn only_once(resolved: &ResolvedService<'_>, hops: &Hops<'_>) -> Traced<Percent> {
    let row = hops.row(|_| true, |_| true);
    let rain = route::compute(resolved, hops).rain_once;
    all((&row, &rain)).map(|(row, rain)| chain::added([row.other, rain.0]))
}

/// Two routes, of which one is enough.
struct Pair<'h, 'p> {
    one: &'h Hops<'p>,
    other: &'h Hops<'p>,
    resolved: &'h ResolvedService<'h>,
}

impl Pair<'_, '_> {
    /// The outage of both at once, of what they share, and by rain on both.
    fn outages(&self) -> (Traced<Percent>, Traced<Percent>, Traced<Percent>) {
        let ids = |hops: &Hops<'_>| hops.parts.iter().map(|part| part.hop.clone()).collect::<HashSet<String>>();
        let points = |hops: &Hops<'_>| {
            hops.points().into_iter().filter_map(|point| point.name.clone()).collect::<HashSet<[String; 2]>>()
        };
        let (hops, feeds) = (&ids(self.one) & &ids(self.other), &points(self.one) & &points(self.other));
        let is_shared = |part: &HopPart| hops.contains(&part.hop);
        let feeds_both = |point: &part::PowerPart| point.name.as_ref().is_some_and(|name| feeds.contains(name));
        let shared = self.one.row(is_shared, feeds_both).decided_by(&self.other.row(is_shared, feeds_both));
        let apart = [self.one, self.other].map(|hops| {
            let own = Hops {
                parts: hops.parts.iter().copied().filter(|part| !is_shared(part)).collect(),
                lost: hops.lost.clone(),
            };
            let paths = own.each(|part| all((&part.positions.a, &part.positions.b)));
            all((&own.row(|_| true, |point| !feeds_both(point)), &paths))
        });
        let [one, other] = &apart;
        let whole = [self.one, self.other].map(|hops| hops.row(|_| true, |_| true).map(|row| row.outage()));
        let within = route::common_within(self.resolved).map(Some).or(|| Traced::constant(None));
        let [first, second] = &whole;
        let shared = shared.map(|row| row.outage());
        let outage =
            all((one, other, &shared, &within, first, second)).map(|(one, other, shared, within, first, second)| {
                let common = common(&one.1, &other.1, within);
                let both = chain::added([shared, chain::both_down(&one.0, &other.0, common)]);
                [first, second].into_iter().fold(both, |least, route| if route < least { route } else { least })
            });
        let rain = all((one, other, &within)).map(|(one, other, within)| {
            chain::rain_at_once(&one.0.rain, &other.0.rain, common(&one.1, &other.1, within))
        });
        (outage, shared, rain)
    }
}

/// Whether rain is common to a hop of one route and a hop of another: everywhere, where no distance is stated.
fn common<'a>(
    one: &'a [(Position, Position)],
    other: &'a [(Position, Position)],
    within: Option<Metres>,
) -> impl Fn(usize, usize) -> bool + 'a {
    move |i, j| {
        let ends = |(a, b): (Position, Position)| [a, b];
        within.is_none_or(|within| chain::apart(ends(one[i]), ends(other[j])) <= within)
    }
}

/// The radios that state no delay.
fn without_latency(hops: &[Hops<'_>]) -> Vec<(String, Place)> {
    let mut list: Vec<(String, Place)> = Vec::new();
    for radio in hops.iter().flat_map(|hops| &hops.parts).flat_map(|part| part.radios.iter()) {
        if radio.latency.get() == Some(None) && !list.iter().any(|(id, _)| *id == radio.id) {
            list.push((radio.id.clone(), radio.at));
        }
    }
    list
}

fn delay_words(hops: &[Hops<'_>]) -> &'static str {
    let words: Vec<&'static str> = hops.iter().map(route::delay_words).collect();
    match *words.as_slice() {
        [] => "delay, one way",
        [only] => only,
        [one, other] if one == other => one,
        _ => "delay of propagation and some of the radios, one way",
    }
}

/// What the delay leaves out, in words.
fn delay_left_out(hops: &[Hops<'_>]) -> Traced<Saying> {
    let each: Vec<Traced<(Milliseconds, Vec<String>)>> = hops.iter().map(Hops::latency).collect();
    Traced::each(&each).map(|routes| {
        let mut radios: Vec<String> = routes.into_iter().flat_map(|(_, without)| without).collect();
        radios.sort();
        radios.dedup();
        let said = radios.into_iter().map(|radio| Saying::LatencyOf { radio: radio.into() });
        let all = said.reduce(|first, next| Saying::And { first: Box::new(first), next: Box::new(next) });
        all.unwrap_or(Saying::Never)
    })
}

/// The hops that carry the least.
fn weakest(hops: &[Hops<'_>]) -> Vec<(String, DocumentId)> {
    let mut list: Vec<(String, DocumentId, MegabitsPerSecond)> = Vec::new();
    for part in hops.iter().flat_map(|hops| &hops.parts) {
        let Some(capacity) = part.capacity.get() else { continue };
        let least = list.first().map(|(.., least)| *least);
        match least {
            Some(least) if capacity > least => continue,
            Some(least) if capacity < least => list.clear(),
            _ => {}
        }
        if !list.iter().any(|(hop, ..)| *hop == part.hop) {
            list.push((part.hop.clone(), part.document, capacity));
        }
    }
    list.into_iter().map(|(hop, document, _)| (hop, document)).collect()
}

/// What each hop takes of the year, the greatest first.
fn worst(hops: &[Hops<'_>]) -> Vec<(String, DocumentId, Percent)> {
    let mut list: Vec<(String, DocumentId, Percent)> = Vec::new();
    for part in hops.iter().flat_map(|hops| &hops.parts) {
        let shares = [&part.rain, &part.clear_air, &part.equipment.a, &part.equipment.b].map(Traced::get);
        let share = chain::added(shares.into_iter().flatten());
        if !list.iter().any(|(hop, ..)| *hop == part.hop) {
            list.push((part.hop.clone(), part.document, share));
        }
    }
    list.sort_by(|(one, _, share), (other, _, share_2)| share_2.0.total_cmp(&share.0).then_with(|| one.cmp(other)));
    list
}
