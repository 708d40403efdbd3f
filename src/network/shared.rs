//! Libraries that networks share: folders in the same repository, read through the same door, their documents on the shelves
//! of every network that names them.

use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::elsewhere::{Origin, SharedLibrary};
use super::faults::file_fault;
use super::files::{Files, Home, SourceFile};
use super::inherit::Givers;
use super::mark::mark;
use super::scope::Scope;
use super::shelving::Shelving;
use super::typing::type_file;
use crate::door::path::{full, named};
use crate::door::{Store, What};
use crate::finding::Finding;
use crate::finding::faults::LIBRARY;
use crate::place::{DocumentId, FileId, Place};
use crate::source::{self, Document, FileFault, FileFaultKind, PassedOver, parse};
use crate::spec::Kind;

/// The most bytes of the libraries of one network together.
const MOST_BYTES: usize = 256 << 20;

/// A library that a network names, read and not yet typed.
pub(super) struct ReadLibrary {
    /// The folder of the network.
    pub(super) home: PathBuf,
    /// Its files, each by its path below the folder of the library.
    pub(super) texts: Vec<(String, FileId)>,
    name: String,
    named_at: Place,
    folder: PathBuf,
}

/// What came of reading the libraries.
#[derive(Default)]
pub(super) struct ReadLibraries {
    /// In order of the networks, then as they name them.
    pub(super) list: Vec<ReadLibrary>,
    /// What is wrong with them, with the folder of the network that names them.
    findings: Vec<(PathBuf, Finding)>,
}

/// Reads the libraries that networks name; `folders` are those of the files so far.
pub(super) fn read_shared(
    scope: &Scope,
    folders: &[PathBuf],
    files: &mut Files,
    shown: &dyn Fn(&Path) -> String,
) -> ReadLibraries {
    let mut all = ReadLibraries::default();
    for (home, named) in named_libraries(folders, files) {
        let inputs = scope.inputs(&home);
        let Some(store) = inputs.store.map(Arc::clone) else { continue };
        let mut read = Read { store: &*store, home: &home, files, shown, bytes: 0, all: &mut all };
        for (place, name) in named {
            if let Err((why, help)) = read.library(place, &name) {
                let message = format!("the library `{name}` cannot be used: {why}");
                let mut finding = Finding::new(&LIBRARY, place, message, "not read");
                finding.help(help);
                read.all.findings.push((home.clone(), finding));
            }
        }
    }
    all
}

/// What the networks name as libraries, by folder: the first network of each.
fn named_libraries(folders: &[PathBuf], files: &Files) -> BTreeMap<PathBuf, Vec<(Place, String)>> {
    let texts = || (0..).map(FileId).zip(folders.iter().zip(&files.list));
    let naming: BTreeSet<&PathBuf> = texts()
        .filter(|(_, (_, file))| file.text.contains(KEY) && file.text.contains(Kind::Network.word()))
        .map(|(_, (folder, _))| folder)
        .collect();
    let mut found = BTreeMap::new();
    for (file, (folder, source)) in texts().filter(|(_, (folder, _))| naming.contains(folder)) {
        if found.contains_key(folder) || !source.text.contains(Kind::Network.word()) {
            continue;
        }
        let documents = parse(&source.text).documents;
        let is_network = |tree: &Document| {
            let kind = tree.get(tree.root(), "kind").and_then(|(_, kind)| tree.text(kind));
            kind == Some(Kind::Network.word())
        };
        let Some(number) = documents.iter().position(is_network) else { continue };
        let (tree, place) =
            (&documents[number], DocumentId { file, number: u16::try_from(number).unwrap_or(u16::MAX) });
        let list = tree.get(tree.root(), KEY).map(|(_, list)| list);
        let items = list.into_iter().flat_map(|list| tree.items(list)).enumerate();
        let named = items.filter_map(|(number, name)| {
            Some((Place::document(place).below(&"libraries[i]", &[number]), tree.text(name)?.to_owned()))
        });
        found.insert(folder.clone(), named.collect());
    }
    found
}

const KEY: &str = "libraries";

/// Puts the documents of libraries on the shelves of the networks that name them. Gives their files, each with the network
/// that uses it.
pub(super) fn shelve_shared(read: ReadLibraries, shelving: &mut Shelving, files: &mut Files) -> Vec<(FileId, usize)> {
    let mut used: Vec<(FileId, usize)> = Vec::new();
    let network = |shelving: &Shelving, home: &Path| {
        let number = shelving.around(home)?;
        let named = shelving.libraries[number].networks.documents.first()?;
        (!named.libraries.is_empty()).then_some(number)
    };
    for (home, finding) in read.findings {
        if network(shelving, &home).is_some() {
            shelving.findings.push(finding);
        }
    }
    for library in read.list {
        let Some(number) = network(shelving, &library.home) else { continue };
        for (_, file) in &library.texts {
            // A folder in another one that is named too.
            if !used.contains(&(*file, number)) {
                used.push((*file, number));
                documents(shelving, files, (*file, number), &library);
            }
        }
        let text = |number: &FileId| files.get(*number).map_or("", |file| file.text.as_str());
        let mark = mark(library.texts.iter().map(|(name, number)| (name.as_str(), text(number))));
        let ReadLibrary { name, folder, texts, .. } = library;
        shelving.libraries[number].shared.push(SharedLibrary { name, folder, files: texts.len(), mark });
    }
    shelving.replace_nothing();
    used
}

/// Puts the documents of a file on the shelves.
fn documents(shelving: &mut Shelving, files: &mut Files, (file, number): (FileId, usize), library: &ReadLibrary) {
    let Some(source) = files.get(file) else { return };
    let typed = type_file(file, &source.text, &Givers::default());
    // What is wrong with a file that is read as somebody's own is said there.
    if source.home == Home::Shared {
        shelving.findings.extend(typed.findings.iter().cloned());
    }
    typed.note_in(files);
    let name = &library.name;
    for entry in typed.entries {
        if may_be_shared(entry.kind) {
            shelving.put_shared(number, entry, Origin::Shared(name.clone()));
            continue;
        }
        let place = Place::document(entry.document).below(&"kind", &[]);
        let message = format!("the library `{name}` holds the {} `{}`, which cannot be shared", entry.kind, entry.id);
        let mut finding = Finding::new(&LIBRARY, place, message, "not of a library");
        finding.because(library.named_at, "named here");
        finding.help("a library holds sites, equipment, templates and neighbours; the rest is a network's own");
        shelving.findings.push(finding);
    }
}

/// The reading of the libraries of one network.
struct Read<'r> {
    store: &'r dyn Store,
    home: &'r Path,
    files: &'r mut Files,
    shown: &'r dyn Fn(&Path) -> String,
    bytes: usize,
    all: &'r mut ReadLibraries,
}

impl Read<'_> {
    /// Reads one; or says why it cannot be, and what would fix it.
    fn library(&mut self, named_at: Place, name: &str) -> Result<(), (String, String)> {
        let folder = self.folder(name)?;
        let found = source::discover(self.store, &folder, &PassedOver::default(), source::MAX_ENTRIES);
        for fault in &found.faults {
            self.fault(fault);
        }
        if found.files.is_empty() {
            return Err(("no YAML file lies in it".into(), "name the folder that holds the documents".into()));
        }
        self.store.expect(&found.files, source::MAX_BYTES);
        let mut known: HashMap<PathBuf, FileId> =
            (0..).map(FileId).zip(&self.files.list).map(|(number, file)| (full(&file.origin), number)).collect();
        let mut texts = Vec::new();
        for path in &found.files {
            let Some(number) = self.file(path, &mut known) else { continue };
            let below = path.strip_prefix(&folder).unwrap_or(path).to_string_lossy().replace('\\', "/");
            texts.push((below, number));
        }
        let home = self.home.to_path_buf();
        self.all.list.push(ReadLibrary { home, texts, name: name.to_owned(), named_at, folder });
        Ok(())
    }

    /// Where a library lies.
    fn folder(&self, name: &str) -> Result<PathBuf, (String, String)> {
        let rule =
            || "name a folder in the same repository, from the folder of this network: `../../equipment`".to_owned();
        let folder = named(self.home, name).map_err(|why| (why, rule()))?;
        let found = self.store.look(&folder).map_err(|refused| (refused.to_string(), rule()))?;
        if found.what != What::Folder {
            return Err(("it is a file".into(), rule()));
        }
        let own = self.store.look(self.home).map_err(|refused| (refused.to_string(), rule()))?;
        if own.real.starts_with(&found.real) {
            return Err((
                "this network lies in it".into(),
                "put what is shared into a folder beside the networks".into(),
            ));
        }
        if found.real.starts_with(&own.real) {
            let why = "it lies in the folder of this network, so its documents are the network's own".to_owned();
            return Err((why, "take the line out".into()));
        }
        Ok(folder)
    }

    /// The number of a file, which may have been read already.
    fn file(&mut self, path: &Path, known: &mut HashMap<PathBuf, FileId>) -> Option<FileId> {
        if let Some(number) = known.get(&full(path)) {
            return Some(*number);
        }
        let text = match source::read(self.store, path) {
            Ok(source) => source.text,
            Err(fault) => {
                self.fault(&fault);
                return None;
            }
        };
        self.bytes += text.len();
        if self.bytes > MOST_BYTES {
            let detail = format!("the libraries of a network are larger than {} MiB together", MOST_BYTES >> 20);
            self.fault(&FileFault::new(path, FileFaultKind::TooMany, detail));
            return None;
        }
        let number = FileId(u32::try_from(self.files.list.len()).unwrap_or(u32::MAX));
        let mut file = SourceFile::new((self.shown)(path), path.to_path_buf(), text);
        file.home = Home::Shared;
        self.files.list.push(file);
        known.insert(full(path), number);
        Some(number)
    }

    fn fault(&mut self, fault: &FileFault) {
        let finding = file_fault(fault, std::env::current_dir().ok().as_deref());
        self.all.findings.push((self.home.to_path_buf(), finding));
    }
}

/// What networks may have in common.
const fn may_be_shared(kind: Kind) -> bool {
    match kind {
        Kind::Site
        | Kind::Radio
        | Kind::Antenna
        | Kind::Bracket
        | Kind::Cable
        | Kind::Fibre
        | Kind::Supply
        | Kind::Arrester
        | Kind::Neighbour
        | Kind::Template
        | Kind::Feeder => true,
        Kind::Network | Kind::Hop | Kind::Record | Kind::Waiver | Kind::Service => false,
    }
}
