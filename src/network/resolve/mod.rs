//! Following references: a hop and everything it names.

mod end;
mod follow;
mod service;

use rayon::prelude::*;

use super::library::Library;
use super::records;
use super::resolved::ResolvedHop;
use super::shelf::Document;
use crate::at;
use crate::finding::Findings;
use crate::finding::faults::{DANGLING, NOT_EVALUATED};
use crate::spec::{Both, Hop, Network, Radio};
use crate::text::few::few;
use crate::text::nearest::{did_you_mean, nearest};

use follow::Follow;
pub use service::{Break, ResolvedService, Route, RouteHop, resolve_services};

/// Follows the references of every hop in the library.
///
/// A hop with a reference that leads nowhere is left out and its reference reported; one that depends on a broken
/// document is left out and reported once, with all the documents it waits for.
#[must_use]
pub fn resolve<'n>(library: &'n Library, findings: &mut Findings) -> Vec<ResolvedHop<'n>> {
    let Some(network) = library.networks.documents.first() else {
        wait_for_network(library, findings);
        return Vec::new();
    };
    for radio in &library.radios.documents {
        check_readout(radio, library, findings);
        check_alignment(radio, library, findings);
    }
    let each = library.hops.documents.par_iter().map(|hop| {
        let mut found = Findings::default();
        (resolve_hop(library, network, hop, &mut found), found)
    });
    let each: Vec<(Option<ResolvedHop<'n>>, Findings)> = each.collect();
    let gather = |(hop, mut found): (Option<ResolvedHop<'n>>, Findings)| {
        findings.list.append(&mut found.list);
        hop
    };
    let mut hops: Vec<ResolvedHop<'n>> = each.into_iter().filter_map(gather).collect();
    records::bring_home(library, &mut hops, findings);
    hops
}

/// Without its network no hop can be judged; the network's own findings say why.
fn wait_for_network(library: &Library, findings: &mut Findings) {
    for hop in &library.hops.documents {
        let message = "cannot be evaluated because its network document has errors";
        let finding = findings.report(&NOT_EVALUATED, at!(hop.id), message, "not judged");
        finding.hop = Some(hop.id.to_string());
        finding.help("fix the network document first");
    }
}

/// The read-out of a radio, if it has one, must be at one of its own ports.
fn check_readout(radio: &Document<Radio>, library: &Library, findings: &mut Findings) {
    let Some(readout) = &radio.readout else { return };
    let port = &readout.port;
    let broken = library.holes.at(&at!(radio.readout)).or_else(|| library.holes.at(&at!(radio.ports))).is_some();
    if broken || radio.ports.iter().any(|known| known.id == *port) {
        return;
    }
    let known: Vec<&str> = radio.ports.iter().map(|port| &*port.id).collect();
    let message = format!("`{}` has no port `{port}`", radio.id);
    let readout = radio.part(&"readout", &[], readout);
    let finding = findings.report(&DANGLING, at!(readout.port), message, "unresolved reference");
    finding.help(match nearest(port, known.iter().copied()) {
        Some(guess) => did_you_mean(guess),
        None => format!("there are: {}", few(&known)),
    });
}

/// The state a radio is aligned in must be one of its own.
fn check_alignment(radio: &Document<Radio>, library: &Library, findings: &mut Findings) {
    let Some(title) = &radio.aligns_in else { return };
    let broken = library.holes.at(&at!(radio.aligns_in)).or_else(|| library.holes.at(&at!(radio.states))).is_some();
    if broken || radio.states.iter().any(|state| state.title == *title) {
        return;
    }
    let mut known: Vec<&str> = radio.states.iter().map(|state| &*state.title).collect();
    known.dedup();
    let message = format!("`{}` has no modulation state `{title}`", radio.id);
    let finding = findings.report(&DANGLING, at!(radio.aligns_in), message, "unresolved reference");
    finding.help(match nearest(title, known.iter().copied()) {
        Some(guess) => did_you_mean(guess),
        None => format!("there are: {}", few(&known)),
    });
}

fn resolve_hop<'n>(
    library: &'n Library,
    network: &'n Document<Network>,
    hop: &'n Document<Hop>,
    findings: &mut Findings,
) -> Option<ResolvedHop<'n>> {
    let mut follow = Follow::new(library, hop, findings);
    let ends = Both::ends(|name| follow.end(name));
    follow.report_waits();
    let profile_file = library.profiles.get(&hop.at);
    let (ends, elsewhere) = (ends.all(|end| end)?, &library.elsewhere);
    Some(ResolvedHop { hop, network, ends, profile_file, records: Vec::new(), mark: None, elsewhere })
}
