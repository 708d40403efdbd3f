//! The one way through the house: scope → files → resolved hops → sheets → findings.
//!
//! Hops are independent, so they are computed and judged side by side and put in order afterwards: the same input gives
//! the same output on any number of threads. A sheet lives only while its hop is looked at; whoever wants something of it
//! takes it out by `visit`.

use rayon::prelude::*;

use crate::finding::{Finding, Findings, Spot};
use crate::network::{self, Files, Loaded, Scope};
use crate::rules::{self, Settings};
use crate::sheet::{HopSheet, RainMaps, Terrains};

/// What came of a run.
#[derive(Debug)]
pub struct Evaluation<R> {
    /// The texts, to point into.
    pub files: Files,
    /// Everything found that touches what was asked about, in order of place.
    pub findings: Vec<Finding>,
    /// What `visit` took from each hop, in order of file.
    pub hops: Vec<R>,
    /// Hops there are, those that could not be evaluated included.
    pub hop_count: usize,
    /// Their ids, with that of their network, sorted.
    pub hop_ids: Vec<[String; 2]>,
}

/// Loads what is in scope, judges every hop and hands its sheet and findings to `visit`.
pub fn evaluate<R: Send>(scope: &Scope, visit: impl Fn(&HopSheet<'_>, &[Finding]) -> R + Sync) -> Evaluation<R> {
    let Loaded { files, libraries, mut findings } = network::load(scope);
    let mut hops = Vec::new();
    let mut hop_count = 0;
    let mut hop_ids = Vec::new();
    for library in &libraries {
        let network = library.networks.documents.first();
        let settings = Settings::of(network, &files);
        let mut found = Findings::default();
        if let Some(network) = network {
            rules::unsound(network, &mut found);
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
        let judged: Vec<(R, Vec<Finding>)> = resolved
            .par_iter()
            .map(|hop| {
                let mut sheet = HopSheet::compute(hop, &maps, &terrains);
                sheet.mask(&library.holes);
                let mut found = Findings::default();
                rules::judge(&sheet, &library.holes, &mut found);
                settings.apply(&mut found.list);
                (visit(&sheet, &found.list), found.list)
            })
            .collect();
        for (taken, mut found) in judged {
            hops.push(taken);
            findings.append(&mut found);
        }
    }
    findings.retain(|finding| concerns(finding, &files, scope));
    findings.sort_by_cached_key(|finding| order(finding, &files));
    // What is wrong with a part that several hops share is said once.
    findings.dedup_by(|later, first| later.says_the_same(first));
    hop_ids.sort();
    Evaluation { files, findings, hops, hop_count, hop_ids }
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
