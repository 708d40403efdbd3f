//! The one way through the house: scope → files → resolved hops → sheets → findings.
//!
//! Hops are independent, so they are computed and judged side by side and put in order afterwards: the same input gives
//! the same output on any number of threads. A sheet lives only while its hop is looked at; whoever wants something of it
//! takes it out by `visit`.

use std::collections::HashSet;

use rayon::prelude::*;

use crate::finding::faults::NOT_EVALUATED;
use crate::finding::{Finding, Findings, Spot};
use crate::network::{self, Files, Library, Loaded, Scope, Slot};
use crate::place::FileId;
use crate::rules::{self, Settings};
use crate::sheet::{HopSheet, RainMaps, Terrains};
use crate::spec::Date;
use crate::verdict::fingerprint;
use crate::verdict::waivers::Waivers;

/// What came of a run.
#[derive(Debug)]
pub struct Evaluation<R> {
    /// The texts, to point into.
    pub files: Files,
    /// Everything found that touches what was asked about and is open, in order of place.
    pub findings: Vec<Finding>,
    /// The same, of what a waiver accepts.
    pub waived: Vec<Finding>,
    /// The same, of what a baseline knows; [`crate::verdict::baseline`] sets it aside.
    pub baselined: Vec<Finding>,
    /// The fingerprints of all that was found, whatever was asked about and whatever is waived.
    pub present: HashSet<String>,
    /// The day waivers were held against, if there are any or a day was given.
    pub today: Option<Date>,
    /// What `visit` took from each hop, in order of file.
    pub hops: Vec<R>,
    /// Hops there are, those that could not be evaluated included.
    pub hop_count: usize,
    /// Their ids, with that of their network, sorted.
    pub hop_ids: Vec<[String; 2]>,
    /// All hops, in order of network and id.
    pub judged: Vec<HopRun>,
    /// What was gone by, in words: the network document of each folder, the maps of rain.
    pub used: Vec<String>,
}

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

/// Loads what is in scope, judges every hop and hands its sheet and findings to `visit`.
pub fn evaluate<R: Send>(scope: &Scope, visit: impl Fn(&HopSheet<'_>, &[Finding]) -> R + Sync) -> Evaluation<R> {
    let Loaded { files, libraries, mut findings } = network::load(scope);
    let mut hops = Vec::new();
    let mut hop_count = 0;
    let mut hop_ids = Vec::new();
    let (mut runs, mut used) = (Vec::new(), Vec::new());
    // The clock is asked only where a waiver goes by it.
    let waived = libraries.iter().any(|library| !library.waivers.documents.is_empty());
    let today = scope.today.or_else(|| waived.then(Date::today));
    for library in &libraries {
        let network = library.networks.documents.first();
        let settings = Settings::of(network, &files);
        let mut found = Findings::default();
        if let Some(network) = network {
            rules::unsound(network, &mut found);
            used.extend(files.get(network.at.file).map(|file| format!("network `{}`: {}", network.id, file.path)));
            let map = network.climate.rain_map.as_ref();
            used.extend(map.map(|map| format!("map of rain rates of network `{}`: {map}", network.id)));
        }
        hop_count += library.hops.index.len();
        let network_id = network.map(|network| network.id.to_string()).unwrap_or_default();
        hop_ids.extend(library.hops.ids().into_iter().map(|hop| [network_id.clone(), hop.to_owned()]));
        let mut resolved = network::resolve(library, &mut found);
        network::mark::mark_recorded(&mut resolved, &files);
        let maps = RainMaps::of(&resolved, &files);
        let terrains = Terrains::of(&resolved, &files);
        rules::unread_maps(&maps, &mut found);
        rules::unread_tiles(&terrains, &mut found);
        settings.apply(&mut found.list);
        findings.append(&mut found.list);
        let waivers = Waivers::of(library, &files, today, &mut found);
        let judged: Vec<(R, Vec<Finding>)> = resolved
            .par_iter()
            .map(|hop| {
                let sheet = HopSheet::compute(hop, &maps, &terrains);
                let mut found = Findings::default();
                rules::judge(&sheet, &library.holes, &mut found);
                settings.apply(&mut found.list);
                waivers.apply(&mut found.list);
                (visit(&sheet, &found.list), found.list)
            })
            .collect();
        let mut of_hops = Vec::new();
        for (taken, mut found) in judged {
            hops.push(taken);
            of_hops.append(&mut found);
        }
        let evaluated: HashSet<&str> = resolved.iter().map(|hop| &*hop.hop.id.0).collect();
        runs.extend(hop_runs(library, &of_hops, &evaluated, &settings, |file| {
            files.get(file).is_some_and(|file| scope.reports(&file.origin))
        }));
        waivers.report(&of_hops, &evaluated, &settings, &mut found);
        settings.apply(&mut found.list);
        findings.append(&mut of_hops);
        findings.append(&mut found.list);
    }
    findings.sort_by_cached_key(|finding| order(finding, &files));
    // What is wrong with a part that several hops share is said once.
    findings.dedup_by(|later, first| later.says_the_same(first));
    hop_ids.sort();
    // Before any is left out: what a finding is known by does not depend on what was asked about.
    fingerprint::give(&mut findings, &files);
    let present = findings.iter().map(|finding| finding.fingerprint.first().to_string()).collect();
    findings.retain(|finding| concerns(finding, &files, scope));
    let (waived, findings) = findings.into_iter().partition(|finding| finding.waived.is_some());
    Evaluation {
        files,
        findings,
        waived,
        baselined: Vec::new(),
        present,
        today,
        hops,
        hop_count,
        hop_ids,
        judged: runs,
        used,
    }
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

/// Whether a finding touches one of the paths a person asked about.
fn concerns(finding: &Finding, files: &Files, scope: &Scope) -> bool {
    finding.labels.iter().any(|label| match label.spot.file().and_then(|file| files.get(file)) {
        Some(file) => scope.reports(&file.origin),
        None => true,
    })
}

/// By place, then rule, then words: no tie is left to the scheduler.
fn order(finding: &Finding, files: &Files) -> (String, usize, &'static str, String) {
    let (path, at) = match finding.labels.first().map(|label| &label.spot) {
        Some(Spot::Path(path)) => (path.clone(), 0),
        Some(spot) => files.locate(spot).map_or((String::new(), 0), |found| {
            (files.get(found.file).map(|file| file.path.clone()).unwrap_or_default(), found.span.start)
        }),
        None => (String::new(), 0),
    };
    (path, at, finding.rule.name, finding.message.clone())
}
