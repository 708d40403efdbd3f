//! One network judged: its hops side by side, then what is said of all of them together.

use std::collections::HashSet;

use rayon::prelude::*;

use crate::finding::faults::NOT_EVALUATED;
use crate::finding::{Finding, Findings};
use crate::network::{self, Companions, Company, Document, Files, Library, ResolvedHop, ResolvedService, Scope, Slot};
use crate::place::{DocumentId, FileId};
use crate::rules::{self, Quieted, Settings};
use crate::sheet::{Hearing, HopPart, HopSheet, Parts, RainMaps, ServiceSheet, Terrains};
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
#[derive(Default)]
pub(super) struct OneNetwork {
    pub(super) findings: Vec<Finding>,
    /// The id of the network and that of the hop.
    pub(super) hop_ids: Vec<[String; 2]>,
    pub(super) runs: Vec<HopRun>,
    /// Rules that it has switched off or lowered.
    pub(super) quieted: Vec<Quieted>,
    /// What was gone by, in words.
    pub(super) used: Vec<String>,
}

/// A network with all that its hops are judged by.
pub(super) struct OpenNetwork<'r> {
    pub(super) hops: Vec<ResolvedHop<'r>>,
    pub(super) services: Vec<ResolvedService<'r>>,
    /// The hops that services run over.
    carrying: HashSet<DocumentId>,
    pub(super) library: &'r Library,
    files: &'r Files,
    scope: &'r Scope,
    settings: Settings<'r>,
    pub(super) maps: RainMaps,
    pub(super) terrains: Terrains,
    pub(super) hearing: Hearing<'r>,
    company: Company,
    waivers: Waivers<'r>,
    /// What was found before any hop was looked at.
    findings: Vec<Finding>,
    of_waivers: Vec<Finding>,
}

/// Hops computed side by side before they are handed on: enough to keep all threads busy, few enough to hold.
fn at_once() -> usize {
    32 * rayon::current_num_threads()
}

impl<'r> OpenNetwork<'r> {
    /// Opens a network; what it reads of the ground is taken out of `samples`.
    pub(super) fn of(
        library: &'r Library,
        files: &'r Files,
        scope: &'r Scope,
        today: Option<Date>,
        samples: &mut usize,
    ) -> Self {
        let network = library.networks.documents.first();
        let settings = Settings::of(network, files);
        let mut found = Findings::default();
        if let Some(network) = network {
            rules::unsound(network, &mut found);
        }
        let mut hops = network::resolve(library, &mut found);
        network::mark::mark_recorded(&mut hops, files);
        let services = network::resolve_services(library, &mut found);
        let carrying = services.iter().flat_map(ResolvedService::hops).map(|hop| hop.at).collect();
        let inputs = scope.inputs(&library.folder);
        let maps = RainMaps::of(&hops, &inputs);
        let terrains = Terrains::of(&hops, &inputs, samples);
        let hearing = Hearing::of(&hops, &library.neighbours.documents);
        let hearing = if scope.is_helped() { hearing } else { hearing.unhelped() };
        let company = Company::of(&hops);
        rules::unread_maps(&maps, &mut found);
        rules::unread_tiles(&terrains, &mut found);
        settings.apply(&mut found.list);
        let findings = std::mem::take(&mut found.list);
        let waivers = Waivers::of(library, files, today, &mut found);
        Self {
            hops,
            services,
            carrying,
            library,
            files,
            scope,
            settings,
            maps,
            terrains,
            hearing,
            company,
            waivers,
            findings,
            of_waivers: found.list,
        }
    }

    /// Who stands with whom.
    pub(super) fn companions(&self) -> Companions<'_> {
        self.company.among(&self.hops)
    }

    /// The sheet of one of its hops.
    pub(super) fn sheet<'h>(&'h self, hop: &'h ResolvedHop<'r>) -> HopSheet<'h> {
        HopSheet::compute(hop, &self.maps, &self.terrains, &self.hearing, self.companions())
    }

    /// The same with what is found about it.
    pub(super) fn hop<'h>(&'h self, hop: &'h ResolvedHop<'r>) -> (HopSheet<'h>, Vec<Finding>) {
        let sheet = self.sheet(hop);
        let mut found = Findings::default();
        rules::judge(&sheet, &self.library.holes, &mut found);
        self.settings.apply(&mut found.list);
        self.waivers.apply(&mut found.list);
        (sheet, found.list)
    }

    /// The ids of its hops, with its own.
    pub(super) fn hop_ids(&self) -> Vec<[String; 2]> {
        ids(self.library, self.library.networks.documents.first())
    }

    /// What was found before any hop was looked at.
    pub(super) fn before_hops(&self) -> &[Finding] {
        &self.findings
    }

    /// Judges its hops side by side, and hands what `visit` took from each to `take`, in order of file.
    pub(super) fn judge<R: Send>(
        &self,
        visit: &(impl Fn(&HopSheet<'_>, &[Finding]) -> R + Sync),
        take: &mut impl FnMut(R),
    ) -> OneNetwork {
        let hops: Vec<&ResolvedHop<'r>> = self.hops.iter().collect();
        let mut parts = Parts::new();
        let mut found = self.run(
            &hops,
            &|sheet, found| (visit(sheet, found), self.part(sheet)),
            &mut |(taken, part)| {
                take(taken);
                parts.extend(part.map(|part| (part.document, part)));
            },
            |_| true,
        );
        found.append(&mut self.of_services(&parts));
        self.close(found)
    }

    /// What a hop brings to services, if any runs over it.
    pub(super) fn part(&self, sheet: &HopSheet<'_>) -> Option<HopPart> {
        self.carrying.contains(&sheet.resolved.hop.at).then(|| HopPart::of(sheet))
    }

    /// What every hop brings that a service runs over.
    pub(super) fn parts(&self) -> Parts {
        let carrying = self
            .hops
            .par_iter()
            .filter_map(|hop| self.carrying.contains(&hop.hop.at).then(|| (hop.hop.at, HopPart::of(&self.sheet(hop)))));
        carrying.collect()
    }

    /// What is found about its services, by what their hops bring.
    pub(super) fn of_services(&self, parts: &Parts) -> Vec<Finding> {
        let mut found = Findings::default();
        for service in &self.services {
            rules::judge_service(&ServiceSheet::compute(service, parts), &self.library.holes, &mut found);
        }
        self.settings.apply(&mut found.list);
        found.list
    }

    /// The same with some of its hops, by their numbers. Gives what is found about no hop, as if all had been judged.
    pub(super) fn judge_only<R: Send>(
        &self,
        numbers: &[usize],
        visit: &(impl Fn(&HopSheet<'_>, &[Finding]) -> R + Sync),
        take: &mut impl FnMut(R),
    ) -> Vec<Finding> {
        let asked: Vec<&ResolvedHop<'r>> = numbers.iter().map(|number| &self.hops[*number]).collect();
        let mut of_hops = self.run(&asked, visit, take, |finding| self.is_waived_somewhere(finding.hop.as_deref()));
        // How a waiver stands is known once its hop has been judged.
        let numbers: HashSet<&usize> = numbers.iter().collect();
        let others = self.hops.iter().enumerate().filter(|(number, _)| !numbers.contains(number));
        let others = others.map(|(_, hop)| hop).filter(|hop| self.is_waived_somewhere(Some(&hop.hop.id.0)));
        of_hops.append(&mut self.run(&others.collect::<Vec<_>>(), &|_, _| (), &mut |()| (), |_| true));
        let mut findings = self.findings.clone();
        findings.append(&mut self.of_waivers(&of_hops, &self.evaluated()));
        findings.retain(|finding| finding.hop.is_none());
        findings
    }

    fn is_waived_somewhere(&self, hop: Option<&str>) -> bool {
        hop.is_some_and(|hop| self.waivers.are_for(hop))
    }

    /// Judges hops side by side, a few at once, and keeps of what is found about them what is to be kept.
    fn run<R: Send>(
        &self,
        hops: &[&ResolvedHop<'r>],
        visit: &(impl Fn(&HopSheet<'_>, &[Finding]) -> R + Sync),
        take: &mut impl FnMut(R),
        keep: impl Fn(&Finding) -> bool + Sync,
    ) -> Vec<Finding> {
        let one = |hop: &&ResolvedHop<'r>| {
            let (sheet, mut found) = self.hop(hop);
            let taken = visit(&sheet, &found);
            found.retain(&keep);
            (taken, found)
        };
        let mut of_hops = Vec::new();
        for hops in hops.chunks(at_once()) {
            let judged: Vec<(R, Vec<Finding>)> = hops.par_iter().map(one).collect();
            for (taken, mut found) in judged {
                take(taken);
                of_hops.append(&mut found);
            }
        }
        of_hops
    }

    /// The hops there is a sheet of.
    fn evaluated(&self) -> HashSet<&str> {
        self.hops.iter().map(|hop| &*hop.hop.id.0).collect()
    }

    /// How its waivers stand to what was found.
    fn of_waivers(&self, of_hops: &[Finding], evaluated: &HashSet<&str>) -> Vec<Finding> {
        let mut found = Findings { list: self.of_waivers.clone() };
        self.waivers.report(of_hops, evaluated, &self.settings, &mut found);
        self.settings.apply(&mut found.list);
        found.list
    }

    /// What is said of all its hops together.
    fn close(&self, mut of_hops: Vec<Finding>) -> OneNetwork {
        let (library, network) = (self.library, self.library.networks.documents.first());
        let evaluated = self.evaluated();
        let asked = |file| self.files.get(file).is_some_and(|file| self.scope.reports(&file.origin));
        let runs = hop_runs(library, &of_hops, &evaluated, &self.settings, asked);
        let mut of_waivers = self.of_waivers(&of_hops, &evaluated);
        let mut findings = self.findings.clone();
        findings.append(&mut of_hops);
        findings.append(&mut of_waivers);
        let used = network.map(|network| gone_by(network, self.files)).unwrap_or_default();
        let quieted = network.map(|network| rules::quieted(network)).unwrap_or_default();
        OneNetwork { findings, hop_ids: ids(library, network), runs, quieted, used }
    }
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
