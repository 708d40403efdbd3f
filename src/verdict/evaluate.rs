//! The one way through the house: scope → files → resolved hops → sheets → findings.
//!
//! Hops are independent, so they are computed and judged side by side and put in order afterwards: the same input gives
//! the same output on any number of threads. A sheet lives only while its hop is looked at; whoever wants something of it
//! takes it out by `visit`.

use std::collections::HashSet;

use crate::finding::{Finding, Spot};
use crate::network::{self, Files, Loaded, Scope};
use crate::rules::Quieted;
use crate::sheet::HopSheet;
use crate::spec::Date;
use crate::verdict::fingerprint;
use crate::verdict::one_network::{HopRun, OneNetwork, judge};

/// The most samples of ground that a run reads along its hops: 2 GB of decoded tiles, some 150 of them read whole.
const MOST_SAMPLES: usize = 500_000_000;

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
    /// Rules that networks have switched off or lowered.
    pub quieted: Vec<Quieted>,
    /// What was gone by, in words: the network document of each folder, the maps of rain.
    pub used: Vec<String>,
    /// Files and folders that patterns say to pass over.
    pub passed_over: Vec<String>,
}

/// Loads what is in scope, judges every hop and hands its sheet and findings to `visit`.
pub fn evaluate<R: Send>(scope: &Scope, visit: impl Fn(&HopSheet<'_>, &[Finding]) -> R + Sync) -> Evaluation<R> {
    let Loaded { files, libraries, mut findings, passed_over } = network::load(scope);
    // The clock is asked only where a waiver goes by it.
    let waived = libraries.iter().any(|library| !library.waivers.documents.is_empty());
    let today = scope.today.or_else(|| waived.then(Date::today));
    let (mut hops, mut hop_count, mut hop_ids) = (Vec::new(), 0, Vec::new());
    let (mut judged, mut quieted, mut used) = (Vec::new(), Vec::new(), Vec::new());
    let mut samples = MOST_SAMPLES;
    for library in &libraries {
        let mut one: OneNetwork<R> = judge(library, &files, scope, today, &mut samples, &visit);
        hop_count += library.hops.index.len();
        findings.append(&mut one.findings);
        hops.append(&mut one.hops);
        hop_ids.append(&mut one.hop_ids);
        judged.append(&mut one.runs);
        quieted.append(&mut one.quieted);
        used.append(&mut one.used);
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
    let baselined = Vec::new();
    Evaluation {
        files,
        findings,
        waived,
        baselined,
        present,
        today,
        hops,
        hop_count,
        hop_ids,
        judged,
        quieted,
        used,
        passed_over,
    }
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
