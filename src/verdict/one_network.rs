//! One network judged: its hops side by side, then what is said of all of them together.

use std::collections::HashSet;

use rayon::prelude::*;

use crate::finding::faults::NOT_EVALUATED;
use crate::finding::{Finding, Findings};
use crate::network::{self, Document, Files, Library, ResolvedHop, Scope, Slot};
use crate::place::FileId;
use crate::rules::{self, Quieted, Settings};
use crate::sheet::{HopSheet, RainMaps, Terrains};
use crate::spec::{Date, Network};
use crate::verdict::waivers::Waivers;

/// How far the rules got with a hop.
#[derive(Debug)]
pub struct HopRun {
    /// The hop.
    pub id: String,
    /// Whether it is among what was asked about.
    pub asked: bool,
    /// Whether there was a sheet to judge, and all of it could be.
    pub evaluated: bool,
    /// Rules that its network has switched off.
    pub off: Vec<&'static str>,
}

/// What came of one network.
pub(super) struct OneNetwork<R> {
    pub(super) findings: Vec<Finding>,
    /// What was taken from each hop, in order of file.
    pub(super) hops: Vec<R>,
    /// The id of the network and that of the hop.
    pub(super) hop_ids: Vec<[String; 2]>,
    pub(super) runs: Vec<HopRun>,
    /// Rules that it has switched off or lowered.
    pub(super) quieted: Vec<Quieted>,
    /// What was gone by, in words.
    pub(super) used: Vec<String>,
}

/// Judges a network; what it reads of the ground is taken out of `samples`.
pub(super) fn judge<R: Send>(
    library: &Library,
    files: &Files,
    scope: &Scope,
    today: Option<Date>,
    samples: &mut usize,
    visit: &(impl Fn(&HopSheet<'_>, &[Finding]) -> R + Sync),
) -> OneNetwork<R> {
    let network = library.networks.documents.first();
    let settings = Settings::of(network, files);
    let mut found = Findings::default();
    if let Some(network) = network {
        rules::unsound(network, &mut found);
    }
    let mut resolved = network::resolve(library, &mut found);
    network::mark::mark_recorded(&mut resolved, files);
    let inputs = scope.inputs(&library.folder);
    let maps = RainMaps::of(&resolved, &inputs);
    let terrains = Terrains::of(&resolved, &inputs, samples);
    rules::unread_maps(&maps, &mut found);
    rules::unread_tiles(&terrains, &mut found);
    settings.apply(&mut found.list);
    let mut findings = std::mem::take(&mut found.list);
    let waivers = Waivers::of(library, files, today, &mut found);
    let one = |hop: &ResolvedHop<'_>| {
        let sheet = HopSheet::compute(hop, &maps, &terrains);
        let mut found = Findings::default();
        rules::judge(&sheet, &library.holes, &mut found);
        settings.apply(&mut found.list);
        waivers.apply(&mut found.list);
        (visit(&sheet, &found.list), found.list)
    };
    let judged: Vec<(R, Vec<Finding>)> = resolved.par_iter().map(one).collect();
    let (hops, of_each): (Vec<R>, Vec<Vec<Finding>>) = judged.into_iter().unzip();
    let mut of_hops = of_each.concat();
    let evaluated: HashSet<&str> = resolved.iter().map(|hop| &*hop.hop.id.0).collect();
    let asked = |file| files.get(file).is_some_and(|file| scope.reports(&file.origin));
    let runs = hop_runs(library, &of_hops, &evaluated, &settings, asked);
    waivers.report(&of_hops, &evaluated, &settings, &mut found);
    settings.apply(&mut found.list);
    findings.append(&mut of_hops);
    findings.append(&mut found.list);
    let (hop_ids, used) = (ids(library, network), network.map(|network| gone_by(network, files)).unwrap_or_default());
    let quieted = network.map(|network| rules::quieted(network)).unwrap_or_default();
    OneNetwork { findings, hops, hop_ids, runs, quieted, used }
}

/// The ids of the hops, with that of their network.
fn ids(library: &Library, network: Option<&Document<Network>>) -> Vec<[String; 2]> {
    let of_network = network.map(|network| network.id.to_string()).unwrap_or_default();
    library.hops.ids().iter().map(|hop| [of_network.clone(), hop.clone()]).collect()
}

/// The files that hold for all hops.
fn gone_by(network: &Document<Network>, files: &Files) -> Vec<String> {
    let own = files.get(network.at.file).map(|file| format!("network `{}`: {}", network.id, file.path));
    let map = network.climate.rain_map.as_ref();
    let map = map.map(|map| format!("map of rain rates of network `{}`: {map}", network.id));
    own.into_iter().chain(map).collect()
}

/// How far the rules got with each hop of a network.
fn hop_runs(
    library: &Library,
    judged: &[Finding],
    evaluated: &HashSet<&str>,
    settings: &Settings<'_>,
    asked: impl Fn(FileId) -> bool,
) -> Vec<HopRun> {
    let in_part = judged.iter().filter(|finding| *finding.rule == NOT_EVALUATED);
    let in_part: HashSet<&str> = in_part.filter_map(|finding| finding.hop.as_deref()).collect();
    let file = |slot: &Slot| match slot {
        Slot::Typed(number) => library.hops.documents[*number].at.file,
        Slot::Broken(document) => document.file,
    };
    let off = settings.off();
    let hops = library.hops.index.iter().map(|(id, slot)| HopRun {
        id: id.to_string(),
        asked: asked(file(slot)),
        evaluated: evaluated.contains(&*id.0) && !in_part.contains(&*id.0),
        off: off.clone(),
    });
    let mut runs: Vec<HopRun> = hops.collect();
    runs.sort_by(|one, other| one.id.cmp(&other.id));
    runs
}
