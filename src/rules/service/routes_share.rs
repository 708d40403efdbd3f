//! Two routes of a service run over the same hop or through the same site.

use crate::network::Route;
use crate::rules::prelude::*;
use crate::sheet::ServiceSheet;

rule! {
    /// Two routes of a service run over the same hop or through the same site.
    ///
    /// What both need is protected by neither. A hop of both routes and a power point of both count once and in full in the
    /// outage of the service; a fire, a lightning stroke or a fallen mast at a site between the ends takes both routes and is
    /// counted nowhere. Sharing the site at either end is natural and not reported.
    ///
    /// Lead the second route over other sites.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    waivable: SERVICE,
    check: Service(check),
}

fn check(sheet: &ServiceSheet<'_>, found: &mut Findings) {
    let service = sheet.resolved.service;
    let [one, other] = sheet.resolved.routes.as_slice() else { return };
    if sheet.is_broken() {
        return;
    }
    let hops = shared(one.ids(), other.ids());
    for hop in &hops {
        let (i, j) = (1, service.routes[1].iter().position(|other| ***other == **hop).unwrap_or_default());
        let message =
            format!("both routes of service `{}` run over hop `{hop}`: it is protected by neither", service.id);
        let finding = found.report(&RULE, at!(service.routes[i][j]), message, "in the other route too");
        let (i, j) = (0, service.routes[0].iter().position(|other| ***other == **hop).unwrap_or_default());
        finding.because(at!(service.routes[i][j]), "here");
        finding.about(format!("hop {hop}")).known_at(at!(service.routes));
        finding.help("route one of them over another hop");
    }
    for site in shared(one.between().into_iter(), other.between().into_iter()) {
        // A shared hop has been told of, with both of its sites.
        if hops.iter().any(|hop| touches(one, hop, site)) {
            continue;
        }
        let message =
            format!("both routes of service `{}` run through site `{site}`: what takes it takes both", service.id);
        let finding = found.report(&RULE, at!(service.routes), message, "meet between the ends");
        finding.about(format!("site {site}"));
        finding.help("lead one of them over another site");
    }
}

/// What is in both lists, each once, in the order of the first.
fn shared<'a>(one: impl Iterator<Item = &'a str>, other: impl Iterator<Item = &'a str>) -> Vec<&'a str> {
    let other: Vec<&str> = other.collect();
    let mut both: Vec<&str> = Vec::new();
    for name in one {
        if other.contains(&name) && !both.contains(&name) {
            both.push(name);
        }
    }
    both
}

/// Whether a hop of a route has an end at a site.
fn touches(route: &Route<'_>, id: &str, site: &str) -> bool {
    route.hops.iter().any(|hop| match hop {
        crate::network::RouteHop::Hop(hop, _) => {
            *hop.spec.id.0 == *id && [&hop.spec.ends.a.site, &hop.spec.ends.b.site].iter().any(|end| ****end == *site)
        }
        crate::network::RouteHop::Broken(_) => false,
    })
}
