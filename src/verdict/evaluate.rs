//! From a scope to its findings, the same way for every command: scope → files → resolved hops → sheets → findings.
//!
//! Hops are independent, so they are computed and judged side by side and put in order afterwards: the same input gives
//! the same output on any number of threads. A sheet lives only while its hop is looked at; whoever wants something of it
//! takes it out by `visit`.

use std::collections::HashSet;
use std::sync::Arc;

use rayon::prelude::*;

use crate::air::Air;
use crate::finding::{Finding, Spot};
use crate::network::{self, Files, Home, Library, Loaded, ResolvedHop, Scope};
use crate::rules::Quieted;
use crate::sheet::{HopPart, HopSheet, Parts, ServiceSheet};
use crate::spec::Date;
use crate::verdict::one_network::{HopRun, OpenNetwork};
use crate::verdict::open_hop::OpenHop;
use crate::verdict::taken::show_takers;
use crate::verdict::{causes, fingerprint};

/// The most samples of ground that a run reads along its hops: 2 GB of decoded tiles, some 150 of them read whole.
const MOST_SAMPLES: usize = 500_000_000;

/// Sheets that a thread has printed before they are handed on: each is a text of many kilobytes.
const SHEETS_AT_ONCE: usize = 4;

/// What came of a run.
#[derive(Debug)]
pub struct Evaluation<R> {
    /// The texts, to point into.
    pub files: Arc<Files>,
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

impl<R> Evaluation<R> {
    /// Puts causes first and what follows from them under them: after this `findings` are those to be told.
    pub fn gather(&mut self) {
        self.findings = causes::gathered(std::mem::take(&mut self.findings), &self.files);
    }

    /// Every open finding, what is told under another one after it.
    pub fn everything(&self) -> impl Iterator<Item = &Finding> {
        self.findings.iter().flat_map(Finding::with_gathered)
    }
}

/// Loads what is in scope, judges every hop and hands its sheet and findings to `visit`.
pub fn evaluate<R: Send>(scope: &Scope, visit: impl Fn(&HopSheet<'_>, &[Finding]) -> R + Sync) -> Evaluation<R> {
    let mut hops = Vec::new();
    let evaluation = Read::of(scope).open().judge(visit, |hop| hops.push(hop));
    Evaluation { hops, ..evaluation }
}

/// A scope that has been read.
#[derive(Debug)]
pub struct Read {
    scope: Scope,
    files: Arc<Files>,
    libraries: Vec<Library>,
    findings: Vec<Finding>,
    passed_over: Vec<String>,
    today: Option<Date>,
}

impl Read {
    /// Reads what is in scope.
    #[must_use]
    pub fn of(scope: &Scope) -> Self {
        let Loaded { files, libraries, findings, passed_over } = network::load(scope);
        // The clock is asked only where a waiver goes by it.
        let waived = libraries.iter().any(|library| !library.waivers.documents.is_empty());
        let today = scope.today.or_else(|| waived.then(Date::today));
        Self { scope: scope.clone(), files: Arc::new(files), libraries, findings, passed_over, today }
    }

    /// The texts, to point into.
    #[must_use]
    pub fn files(&self) -> &Files {
        &self.files
    }

    /// Where it was read from.
    #[must_use]
    pub const fn scope(&self) -> &Scope {
        &self.scope
    }

    /// One library a network, in order of folder.
    #[must_use]
    pub fn libraries(&self) -> &[Library] {
        &self.libraries
    }

    /// What is wrong with the files themselves.
    #[must_use]
    pub fn findings(&self) -> &[Finding] {
        &self.findings
    }

    /// Files and folders that patterns say to pass over.
    #[must_use]
    pub fn passed_over(&self) -> &[String] {
        &self.passed_over
    }

    /// Opens its networks.
    #[must_use]
    pub fn open(&self) -> Open<'_> {
        let (files, mut samples) = (&*self.files, MOST_SAMPLES);
        let open = |library| OpenNetwork::of(library, files, &self.scope, self.today, &mut samples);
        Open { read: self, networks: self.libraries.iter().map(open).collect() }
    }
}

/// Networks whose hops can be judged, all of them or one at a time.
pub struct Open<'r> {
    read: &'r Read,
    networks: Vec<OpenNetwork<'r>>,
}

impl Open<'_> {
    /// Judges every hop; `take` gets what `visit` took from each, one after the other in order of file. The evaluation has
    /// no hops itself.
    pub fn judge<R: Send>(
        &self,
        visit: impl Fn(&HopSheet<'_>, &[Finding]) -> R + Sync,
        mut take: impl FnMut(R),
    ) -> Evaluation<R> {
        let (scope, files) = (&self.read.scope, &self.read.files);
        let mut findings = self.read.findings.clone();
        let (mut hop_count, mut hop_ids) = (0, Vec::new());
        let (mut judged, mut quieted, mut used) = (Vec::new(), Vec::new(), Vec::new());
        for (network, library) in self.networks.iter().zip(&self.read.libraries) {
            let mut one = network.judge(&visit, &mut take);
            hop_count += library.hops.index.len();
            findings.append(&mut one.findings);
            hop_ids.append(&mut one.hop_ids);
            judged.append(&mut one.runs);
            quieted.append(&mut one.quieted);
            used.append(&mut one.used);
        }
        findings.sort_by_cached_key(|finding| order(finding, files));
        // What is wrong with a part that several hops share is said once.
        findings.dedup_by(|later, first| first.takes_in(later));
        hop_ids.sort();
        // Before any is left out: what a finding is known by does not depend on what was asked about.
        fingerprint::give(&mut findings, files);
        let present = findings.iter().map(|finding| finding.fingerprint.first().to_string()).collect();
        show_takers(&mut findings, files);
        // Of a hop that is asked about everything is told, wherever the label stands.
        let asked: HashSet<&str> = judged.iter().filter(|hop| hop.asked).map(|hop| hop.id.as_str()).collect();
        let is_of_asked = |finding: &Finding| finding.hops().any(|hop| asked.contains(hop.as_str()));
        findings.retain(|finding| is_of_asked(finding) || concerns(finding, files, scope));
        for finding in &mut findings {
            keep_to_own(finding, files);
        }
        let (waived, findings) = findings.into_iter().partition(|finding| finding.waived.is_some());
        Evaluation {
            files: Arc::clone(files),
            findings,
            waived,
            baselined: Vec::new(),
            present,
            today: self.read.today,
            hops: Vec::new(),
            hop_count,
            hop_ids,
            judged,
            quieted,
            used,
            passed_over: self.read.passed_over.clone(),
        }
    }

    /// Judges these hops, and nothing beyond what has to be known for that; `take` gets what `visit` took from each, in the
    /// order of their numbers. Gives what is found about no hop that touches what was asked about, in order of place.
    pub fn judge_only<R: Send>(
        &self,
        numbers: &[usize],
        visit: impl Fn(&HopSheet<'_>, &[Finding]) -> R + Sync,
        mut take: impl FnMut(R),
    ) -> Vec<Finding> {
        let (scope, files) = (&self.read.scope, &self.read.files);
        let mut findings = self.read.findings.clone();
        findings.retain(|finding| finding.hop.is_none());
        let mut before = 0;
        for network in &self.networks {
            let own = before..before + network.hops.len();
            let numbers: Vec<usize> =
                numbers.iter().filter(|number| own.contains(number)).map(|number| number - before).collect();
            findings.append(&mut network.judge_only(&numbers, &visit, &mut take));
            before = own.end;
        }
        findings.sort_by_cached_key(|finding| order(finding, files));
        findings.dedup_by(|later, first| first.takes_in(later));
        show_takers(&mut findings, files);
        findings.retain(|finding| concerns(finding, files, scope));
        findings
    }

    /// What is found about services; the hops they run over are computed for it.
    #[must_use]
    pub fn of_services(&self) -> Vec<Finding> {
        let networks = self.networks.iter().filter(|network| !network.services.is_empty());
        let mut findings: Vec<Finding> = networks.flat_map(|network| network.of_services(&network.parts())).collect();
        findings.sort_by_cached_key(|finding| order(finding, &self.read.files));
        show_takers(&mut findings, &self.read.files);
        findings.retain(|finding| concerns(finding, &self.read.files, &self.read.scope));
        findings
    }

    /// Hands the sheet of every service to `visit`, in order of file, by what its hops bring: see [`Self::part`].
    ///
    /// # Errors
    /// That of `visit`.
    pub fn services<E>(
        &self,
        parts: &Parts,
        mut visit: impl FnMut(&ServiceSheet<'_>) -> Result<(), E>,
    ) -> Result<(), E> {
        let services = self.networks.iter().flat_map(|network| &network.services);
        services.map(|service| ServiceSheet::compute(service, parts)).try_for_each(|sheet| visit(&sheet))
    }

    /// What a hop brings to the services that run over it, if any does.
    #[must_use]
    pub fn part(&self, sheet: &HopSheet<'_>) -> Option<HopPart> {
        self.networks.iter().find_map(|network| network.part(sheet))
    }

    /// What is found about hops before any of them is judged, and `more` that is, in order of place; of that, what touches
    /// what was asked about and is open.
    #[must_use]
    pub fn of_hops_that_wait(&self, mut more: Vec<Finding>) -> Vec<Finding> {
        let (scope, files) = (&self.read.scope, &self.read.files);
        let before = self.networks.iter().flat_map(OpenNetwork::before_hops).chain(&self.read.findings);
        more.extend(before.filter(|finding| finding.hop.is_some()).cloned());
        more.sort_by_cached_key(|finding| order(finding, files));
        show_takers(&mut more, files);
        more.retain(|finding| concerns(finding, files, scope) && finding.waived.is_none());
        more
    }

    /// The ids of all hops, those that cannot be evaluated included, with that of their network, sorted.
    #[must_use]
    pub fn hop_ids(&self) -> Vec<[String; 2]> {
        let mut ids: Vec<[String; 2]> = self.networks.iter().flat_map(OpenNetwork::hop_ids).collect();
        ids.sort();
        ids
    }

    /// The hops that there are sheets of, in order of file, each with its network.
    pub fn open_hops(&self) -> impl Iterator<Item = OpenHop<'_>> {
        self.networks.iter().flat_map(OpenHop::all)
    }

    /// Hops there are, those that cannot be evaluated included.
    #[must_use]
    pub fn hop_count(&self) -> usize {
        self.read.libraries.iter().map(|library| library.hops.index.len()).sum()
    }

    /// The hops that there are sheets of, in order of file: by their numbers here, from 0, they are asked for below.
    pub fn hops(&self) -> impl Iterator<Item = &ResolvedHop<'_>> {
        self.networks.iter().flat_map(|network| &network.hops)
    }

    /// Of each network its hops that there are sheets of, and who hears whom.
    pub fn airs(&self) -> impl Iterator<Item = (&[ResolvedHop<'_>], &Air<'_>)> {
        self.networks.iter().map(|network| (network.hops.as_slice(), network.hearing.air()))
    }

    /// The sheet of a hop and what is found about it.
    pub fn hop<R>(&self, number: usize, work: impl FnOnce(&HopSheet<'_>, &[Finding]) -> R) -> Option<R> {
        let (network, hop) = self.at(number)?;
        let (sheet, found) = network.hop(hop);
        Some(work(&sheet, &found))
    }

    /// Computes the sheets of these hops side by side and judges none; `take` gets what `visit` took from each, one after
    /// the other in the order asked for, until it fails. Of the hops that are still to come nothing is held.
    ///
    /// # Errors
    /// That of `take`.
    pub fn sheets<R: Send, E>(
        &self,
        numbers: &[usize],
        visit: impl Fn(&HopSheet<'_>) -> R + Sync,
        mut take: impl FnMut(R) -> Result<(), E>,
    ) -> Result<(), E> {
        let one = |number: &usize| self.at(*number).map(|(network, hop)| visit(&network.sheet(hop)));
        for numbers in numbers.chunks(SHEETS_AT_ONCE * rayon::current_num_threads()) {
            let taken: Vec<Option<R>> = numbers.par_iter().map(one).collect();
            taken.into_iter().flatten().try_for_each(&mut take)?;
        }
        Ok(())
    }

    fn at(&self, mut number: usize) -> Option<(&OpenNetwork<'_>, &ResolvedHop<'_>)> {
        for network in &self.networks {
            match network.hops.get(number) {
                Some(hop) => return Some((network, hop)),
                None => number -= network.hops.len(),
            }
        }
        None
    }
}

/// Takes the fix off a finding that would alter what is not the network's own.
fn keep_to_own(finding: &mut Finding, files: &Files) {
    let own = |spot: &Spot| spot.file().and_then(|file| files.get(file)).is_none_or(|file| file.home == Home::Own);
    if finding.fix.as_ref().is_some_and(|fix| !fix.edits.iter().all(|(spot, _)| own(spot))) {
        finding.fix = None;
    }
}

/// Whether a finding touches one of the paths a person asked about.
fn concerns(finding: &Finding, files: &Files, scope: &Scope) -> bool {
    finding.labels.iter().any(|label| {
        let places = [label.spot.file(), files.shown_in(&label.spot)];
        let mut touched = places.into_iter().flatten().filter_map(|file| files.get(file)).peekable();
        // What is used is looked at with who uses it.
        touched.peek().is_none() || touched.any(|file| file.home != Home::Own || scope.reports(&file.origin))
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
