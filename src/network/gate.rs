//! Judging by the gate that was there before: what a change must reach is not for the change to say.
//!
//! Of another state come objectives, climate, codes, limits, severities, the terms of waivers and the waivers themselves;
//! of a hop that was there, what it asks for in place of its network and what its licence says. All else is as it is now.

use std::collections::BTreeMap;
use std::mem;

use super::files::{Files, SourceFile};
use super::library::Library;
use super::load::{Loaded, load_own};
use super::scope::Scope;
use super::shelf::{Document, Slot};
use crate::door::path::full;
use crate::finding::faults::NO_NETWORK;
use crate::finding::{Finding, Spot};
use crate::place::FileId;

/// Reads and types everything in scope, and puts in its place the gate that counts.
#[must_use]
pub fn load(scope: &Scope) -> Loaded {
    let mut loaded = load_own(scope);
    if let Some(gate) = scope.gate() {
        judge_by(&mut loaded, load_own(gate));
    }
    loaded
}

/// Puts the gate of another state in the place of the one there is, network by network. One that has none there is judged
/// by its own, and that is a finding: whoever moves a network would be rid of its gate.
fn judge_by(now: &mut Loaded, gate: Loaded) {
    let mut old = Old { files: gate.files.list.into_iter().map(Some).collect(), moved: BTreeMap::new() };
    let mut gates = gate.libraries;
    let alone = now.libraries.len() == 1 && gates.len() == 1;
    let Loaded { files, libraries, findings, .. } = now;
    for library in libraries {
        let found = gates.iter().position(|gate| is_same(gate, library)).or(alone.then_some(0));
        let gate = found.map(|at| gates.swap_remove(at)).filter(|gate| !gate.networks.documents.is_empty());
        match gate {
            Some(gate) => take(library, gate, &mut old, files),
            None => findings.push(ungated(library, files)),
        }
    }
}

/// The same folder, or the same network elsewhere.
fn is_same(gate: &Library, library: &Library) -> bool {
    let id = |library: &Library| library.networks.documents.first().map(|network| network.id.to_string());
    full(&gate.folder) == full(&library.folder) || (id(gate).is_some() && id(gate) == id(library))
}

fn ungated(library: &Library, files: &Files) -> Finding {
    let own = library.networks.documents.first().and_then(|network| files.get(network.at.file));
    let path = own.map_or_else(|| library.folder.display().to_string(), |file| file.path.clone());
    let message = format!("{path}: the state whose gate counts has no network document for this network");
    let mut finding = Finding::new(&NO_NETWORK, Spot::Path(path), message, "judged by its own gate");
    finding.help("a network that is new or has moved needs somebody to agree to its gate: judge it without one");
    finding
}

/// The files of the other state that something is taken out of.
struct Old {
    files: Vec<Option<SourceFile>>,
    moved: BTreeMap<FileId, FileId>,
}

impl Old {
    /// Takes a document over with its text, as if that lay in the folder of the library.
    fn adopt<T>(&mut self, document: &mut Document<T>, folders: [&std::path::Path; 2], files: &mut Files) {
        let before = document.at.file;
        let next = FileId(u32::try_from(files.list.len()).unwrap_or(u32::MAX));
        document.at.file = *self.moved.entry(before).or_insert(next);
        if let Some(mut file) = self.files.get_mut(before.0 as usize).and_then(Option::take) {
            let [was, is] = folders;
            if let Ok(below) = file.origin.strip_prefix(was) {
                file.origin = is.join(below);
            }
            files.list.push(file);
        }
    }
}

fn take(library: &mut Library, mut gate: Library, old: &mut Old, files: &mut Files) {
    let folder = library.folder.clone();
    let folders = [gate.folder.as_path(), folder.as_path()];
    if let Some(now) = library.networks.documents.first_mut() {
        let mut network = gate.networks.documents.swap_remove(0);
        old.adopt(&mut network, folders, files);
        // What is printed, and where the ground is read, is no gate.
        mem::swap(&mut network.spec.id, &mut now.spec.id);
        mem::swap(&mut network.spec.libraries, &mut now.spec.libraries);
        mem::swap(&mut network.spec.requires, &mut now.spec.requires);
        mem::swap(&mut network.spec.title, &mut now.spec.title);
        mem::swap(&mut network.spec.owner, &mut now.spec.owner);
        mem::swap(&mut network.spec.date, &mut now.spec.date);
        mem::swap(&mut network.spec.terrain, &mut now.spec.terrain);
        mem::swap(&mut network.spec.print, &mut now.spec.print);
        mem::swap(&mut network.spec.revision, &mut now.spec.revision);
        mem::swap(&mut network.spec.creator, &mut now.spec.creator);
        mem::swap(&mut network.spec.approver, &mut now.spec.approver);
        mem::swap(&mut network.spec.revisions, &mut now.spec.revisions);
        *now = network;
    }
    for waiver in &mut gate.waivers.documents {
        old.adopt(waiver, folders, files);
    }
    library.waivers = gate.waivers;
    for hop in &mut library.hops.documents {
        let Some(Slot::Typed(number)) = gate.hops.index.get(&hop.spec.id) else { continue };
        let before = &mut gate.hops.documents[*number].spec;
        hop.spec.objectives = mem::take(&mut before.objectives);
        hop.spec.climate = mem::take(&mut before.climate);
        hop.spec.licence = mem::take(&mut before.licence);
    }
}
