//! Following the references of services: which hops each route runs over, and whether they join.

use super::super::library::{Library, Shelved};
use super::super::shelf::{Document, Look};
use crate::at;
use crate::finding::Findings;
use crate::finding::faults::DANGLING;
use crate::place::{DocumentId, Place};
use crate::spec::{Hop, Network, Ref, Service, Way};
use crate::text::few::few;
use crate::text::nearest::did_you_mean;

/// A service whose references all lead somewhere.
#[derive(Debug)]
pub struct ResolvedService<'n> {
    /// Its own document.
    pub service: &'n Document<Service>,
    /// The network it belongs to.
    pub network: &'n Document<Network>,
    /// Its routes, as far as their hops are known.
    pub routes: Vec<Route<'n>>,
}

/// One route of a service.
#[derive(Debug)]
pub struct Route<'n> {
    /// Its hops, in order.
    pub hops: Vec<RouteHop<'n>>,
    /// Where it does not join, if it does not.
    pub breaks: Option<Break>,
}

/// A hop of a route.
#[derive(Debug, Clone, Copy)]
pub enum RouteHop<'n> {
    /// One that is there, and the way in which it is gone.
    Hop(&'n Document<Hop>, Way),
    /// One whose document could not be read.
    Broken(DocumentId),
}

/// Where a route does not join.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Break {
    /// There are no hops in it.
    Empty,
    /// A hop, by its number, that has no end at the site where the route has come to.
    Apart(usize, String),
    /// It ends at another site than the service.
    Short(String),
}

impl<'n> ResolvedService<'n> {
    /// The hops of all its routes.
    pub fn hops(&self) -> impl Iterator<Item = &'n Document<Hop>> + '_ {
        self.routes.iter().flat_map(|route| &route.hops).filter_map(|hop| match hop {
            RouteHop::Hop(hop, _) => Some(*hop),
            RouteHop::Broken(_) => None,
        })
    }
}

impl<'n> Route<'n> {
    /// The sites between its ends, in order.
    #[must_use]
    pub fn between(&self) -> Vec<&'n str> {
        let ways = self.hops.iter().filter_map(|hop| match hop {
            RouteHop::Hop(hop, way) => Some(arrival(hop, *way)),
            RouteHop::Broken(_) => None,
        });
        let mut sites: Vec<&str> = ways.collect();
        sites.pop();
        sites
    }

    /// The ids of its hops.
    pub fn ids(&self) -> impl Iterator<Item = &'n str> + '_ {
        self.hops.iter().filter_map(|hop| match hop {
            RouteHop::Hop(hop, _) => Some(&*hop.spec.id.0),
            RouteHop::Broken(_) => None,
        })
    }
}

/// Follows the references of every service. One with a reference that leads nowhere is left out and its reference reported.
#[must_use]
pub fn resolve_services<'n>(library: &'n Library, findings: &mut Findings) -> Vec<ResolvedService<'n>> {
    let Some(network) = library.networks.documents.first() else { return Vec::new() };
    let services = library.services.documents.iter();
    services.filter_map(|service| resolve_service(library, network, service, findings)).collect()
}

fn resolve_service<'n>(
    library: &'n Library,
    network: &'n Document<Network>,
    service: &'n Document<Service>,
    findings: &mut Findings,
) -> Option<ResolvedService<'n>> {
    // Of what is broken the fault itself is told.
    let sound = |place: &Place| library.holes.at(place).is_none();
    let ends = [
        (sound(&at!(service.from))).then(|| known(library, &service.from, at!(service.from), findings)),
        (sound(&at!(service.to))).then(|| known(library, &service.to, at!(service.to), findings)),
    ];
    let mut whole = ends.iter().all(|end| *end == Some(true)) && sound(&at!(service.routes));
    let mut routes = Vec::new();
    for (i, route) in service.routes.iter().enumerate() {
        let mut hops = Vec::new();
        for (j, reference) in route.iter().enumerate() {
            let place = at!(service.routes[i][j]);
            if !sound(&place) {
                continue;
            }
            whole &= known(library, reference, place, findings);
            hops.push(library.look(reference));
        }
        routes.push(walk(library, &hops, &service.from.0, &service.to.0));
    }
    whole.then_some(ResolvedService { service, network, routes })
}

/// Whether a reference leads somewhere; said where it does not.
fn known<T: Shelved>(library: &Library, reference: &Ref<T>, place: Place, findings: &mut Findings) -> bool {
    let Look::Missing(guess) = library.look(reference) else { return true };
    let message = format!("the network has no {} `{reference}`", T::KIND);
    let finding = findings.report(&DANGLING, place, message, "unresolved reference");
    let known = T::shelf(library).ids();
    finding.help(match guess {
        Some(guess) => format!("{} The service will be checked once this is resolved", did_you_mean(guess)),
        None if known.is_empty() => format!("there is no {} at all; add one", T::KIND),
        None => format!("there are: {}", few(known)),
    });
    false
}

/// Goes along hops from site to site.
fn walk<'n>(library: &Library, hops: &[Look<'n, Hop>], from: &str, to: &str) -> Route<'n> {
    let mut at: Option<&str> = Some(from);
    let mut route = Route { hops: Vec::new(), breaks: hops.is_empty().then_some(Break::Empty) };
    for (number, look) in hops.iter().enumerate() {
        let hop = match look {
            Look::Found(hop) if leads(library, hop) => *hop,
            // Where it leads is not known, nor from where the next one has to.
            Look::Found(Document { at: document, .. }) | Look::Broken(document) => {
                route.hops.push(RouteHop::Broken(*document));
                at = None;
                continue;
            }
            Look::Missing(_) => continue,
        };
        let ends = &hop.spec.ends;
        let way = match at {
            Some(site) if **ends.a.site == *site => Way::AToB,
            Some(site) if **ends.b.site == *site => Way::BToA,
            Some(site) => {
                route.breaks.get_or_insert_with(|| Break::Apart(number, site.to_owned()));
                Way::AToB
            }
            None => Way::AToB,
        };
        route.hops.push(RouteHop::Hop(hop, way));
        at = at.map(|_| arrival(hop, way));
    }
    if let (Some(site), None) = (at.filter(|site| *site != to), &route.breaks) {
        route.breaks = Some(Break::Short(site.to_owned()));
    }
    route
}

/// Whether it is known from where to where a hop leads.
fn leads(library: &Library, hop: &Document<Hop>) -> bool {
    let sound =
        |place: Place, site| library.holes.at(&place).is_none() && !matches!(library.look(site), Look::Missing(_));
    sound(at!(hop.ends.a.site), &hop.ends.a.site) && sound(at!(hop.ends.b.site), &hop.ends.b.site)
}

/// The site where a hop leads.
fn arrival(hop: &Document<Hop>, way: Way) -> &str {
    let ends = &hop.spec.ends;
    match way {
        Way::AToB => &ends.b.site.0,
        Way::BToA => &ends.a.site.0,
    }
}
