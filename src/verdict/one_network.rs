//! One network judged: its hops side by side, then what is said of all of them together.

use std::collections::HashSet;

use rayon::prelude::*;

use crate::finding::faults::NOT_EVALUATED;
use crate::finding::{Finding, Findings};
use crate::network::{self, Document, Files, Library, ResolvedHop, Scope, Slot};
use crate::place::{DocumentId, FileId};
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
    library: &'r Library,
    files: &'r Files,
    scope: &'r Scope,
    settings: Settings<'r>,
    maps: RainMaps,
    terrains: Terrains,
    waivers: Waivers<'r>,
    /// What was found before any hop was looked at.
    findings: Vec<Finding>,
    of_waivers: Vec<Finding>,
}

/// A hop of a network that is open, to be judged by itself.
#[derive(Clone, Copy)]
pub struct OpenHop<'o> {
    network: &'o OpenNetwork<'o>,
    /// The hop.
    pub hop: &'o ResolvedHop<'o>,
}

impl<'o> OpenHop<'o> {
    /// Hands its sheet and what is found about it to `work`.
    pub fn judge<R>(&self, work: impl FnOnce(&HopSheet<'_>, &[Finding]) -> R) -> R {
        let (sheet, found) = self.network.hop(self.hop);
        work(&sheet, &found)
    }

    /// The documents it is made from and those that came back from it, in an order that is the same in another state.
    #[must_use]
    pub fn documents(&self) -> Vec<DocumentId> {
        let records = self.hop.records.iter().map(|record| record.at);
        network::mark::sources(self.hop).into_iter().chain(records).collect()
    }

    /// Whether a waiver is for it, be it one that holds or not.
    #[must_use]
    pub fn is_waived(&self) -> bool {
        self.network.library.waivers.documents.iter().any(|waiver| *waiver.target.hop.0 == *self.hop.hop.id.0)
    }

    /// Whether nothing it is made from has a stand-in for something broken.
    #[must_use]
    pub fn is_sound(&self) -> bool {
        let holes = &self.network.library.holes;
        let sound = holes.is_empty() || self.documents().iter().all(|document| holes.of(*document).is_none());
        sound && !matches!(self.hop.profile_file, Some(Err(_)))
    }

    /// Whether the maps of rain and the tiles of ground heights give the same for it as for a hop of another state.
    #[must_use]
    pub fn has_the_same_beside(&self, other: OpenHop<'_>) -> bool {
        self.network.maps.same_for([self.hop, other.hop], &other.network.maps)
            && self.network.terrains.same_for([self.hop, other.hop], &other.network.terrains)
    }
}

/// Hops judged side by side before they are handed on: enough to keep all threads busy, few enough to hold.
const AT_ONCE: usize = 512;

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
        let inputs = scope.inputs(&library.folder);
        let maps = RainMaps::of(&hops, &inputs);
        let terrains = Terrains::of(&hops, &inputs, samples);
        rules::unread_maps(&maps, &mut found);
        rules::unread_tiles(&terrains, &mut found);
        settings.apply(&mut found.list);
        let findings = std::mem::take(&mut found.list);
        let waivers = Waivers::of(library, files, today, &mut found);
        Self { hops, library, files, scope, settings, maps, terrains, waivers, findings, of_waivers: found.list }
    }

    /// The sheet of one of its hops and what is found about it.
    pub(super) fn hop<'h>(&'h self, hop: &'h ResolvedHop<'r>) -> (HopSheet<'h>, Vec<Finding>) {
        let sheet = HopSheet::compute(hop, &self.maps, &self.terrains);
        let mut found = Findings::default();
        rules::judge(&sheet, &self.library.holes, &mut found);
        self.settings.apply(&mut found.list);
        self.waivers.apply(&mut found.list);
        (sheet, found.list)
    }

    /// Its hops, each with the network it is judged in.
    pub(super) fn open_hops(&self) -> impl Iterator<Item = OpenHop<'_>> {
        self.hops.iter().map(|hop| OpenHop { network: self, hop })
    }

    /// The ids of its hops, with its own.
    pub(super) fn hop_ids(&self) -> Vec<[String; 2]> {
        ids(self.library, self.library.networks.documents.first())
    }

    /// Judges its hops side by side, and hands what `visit` took from each to `take`, in order of file.
    pub(super) fn judge<R: Send>(
        &self,
        wanted: &impl Fn(OpenHop<'_>) -> bool,
        visit: &(impl Fn(&HopSheet<'_>, &[Finding]) -> R + Sync),
        take: &mut impl FnMut(R),
    ) -> OneNetwork {
        let one = |hop: &OpenHop<'_>| {
            let (sheet, found) = self.hop(hop.hop);
            (visit(&sheet, &found), found)
        };
        let mut of_hops = Vec::new();
        let hops: Vec<OpenHop<'_>> = self.open_hops().filter(|hop| wanted(*hop)).collect();
        for hops in hops.chunks(AT_ONCE) {
            let judged: Vec<(R, Vec<Finding>)> = hops.par_iter().map(one).collect();
            for (taken, mut found) in judged {
                take(taken);
                of_hops.append(&mut found);
            }
        }
        self.close(of_hops)
    }

    /// What is said of all its hops together.
    fn close(&self, mut of_hops: Vec<Finding>) -> OneNetwork {
        let (library, network) = (self.library, self.library.networks.documents.first());
        let evaluated: HashSet<&str> = self.hops.iter().map(|hop| &*hop.hop.id.0).collect();
        let asked = |file| self.files.get(file).is_some_and(|file| self.scope.reports(&file.origin));
        let runs = hop_runs(library, &of_hops, &evaluated, &self.settings, asked);
        let mut of_waivers = Findings { list: self.of_waivers.clone() };
        self.waivers.report(&of_hops, &evaluated, &self.settings, &mut of_waivers);
        self.settings.apply(&mut of_waivers.list);
        let mut findings = self.findings.clone();
        findings.append(&mut of_hops);
        findings.append(&mut of_waivers.list);
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
