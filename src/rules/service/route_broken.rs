//! The hops of a route do not lead from one end of its service to the other.

use crate::network::Break;
use crate::rules::prelude::*;
use crate::sheet::{MOST_ROUTES, ServiceSheet};

rule! {
    /// The hops of a route do not lead from one end of its service to the other.
    ///
    /// Each hop has to have an end at the site where the route has come to, from `from` on, and the last one an end at `to`. A
    /// service has one route, or two of which the second stands in for the first. Nothing else is judged of the service until
    /// its routes join.
    ///
    /// Put the hops in order, or name the one that is missing.
    ///
    /// Source: plain reading of the document; no method is involved.
    severity: Error,
    never_waived: IS_ABOUT_FILES,
    check: Service(check),
}

fn check(sheet: &ServiceSheet<'_>, found: &mut Findings) {
    let (service, routes) = (sheet.resolved.service, &sheet.resolved.routes);
    if routes.is_empty() || routes.len() > MOST_ROUTES {
        let message = format!("service `{}` has {} routes, not one or two", service.id, routes.len());
        let finding = found.report(&RULE, at!(service.routes), message, "not judged");
        finding.help("one list of hops, or two of which the second stands in for the first");
    }
    for (i, route) in routes.iter().enumerate() {
        match &route.breaks {
            None => {}
            Some(Break::Empty) => {
                let message = format!("route {} of service `{}` has no hops", i + 1, service.id);
                found.report(&RULE, at!(service.routes[i]), message, "unresolved reference");
            }
            Some(Break::Apart(j, site)) => {
                let j = *j;
                let hop = &service.routes[i][j];
                let message = format!(
                    "hop `{hop}` has no end at `{site}`, where route {} of service `{}` has come to",
                    i + 1,
                    service.id
                );
                let finding = found.report(&RULE, at!(service.routes[i][j]), message, "does not join");
                if j == 0 {
                    finding.because(at!(service.from), "the route begins here");
                }
                finding.help("put the hops in order from `from` to `to`, or name the one that is missing");
            }
            Some(Break::Short(site)) => {
                let message =
                    format!("route {} of service `{}` ends at `{site}`, not at `{}`", i + 1, service.id, service.to);
                let finding = found.report(&RULE, at!(service.routes[i]), message, "does not reach the end");
                finding.because(at!(service.to), "the end of the service");
                finding.help("name the hops that are missing, or another end");
            }
        }
    }
}
