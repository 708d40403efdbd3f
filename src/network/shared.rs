//! Libraries that networks share: folders in the same repository, read through the same door, their documents on the shelves
//! of every network that names them.

use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::elsewhere::{Origin, SharedLibrary};
use super::faults::file_fault;
use super::files::{Files, Home, SourceFile};
use super::mark::mark;
use super::scope::Scope;
use super::shelving::Shelving;
use super::typing::type_file;
use crate::at;
use crate::door::path::{full, named};
use crate::door::{Store, What};
use crate::finding::Finding;
use crate::finding::faults::LIBRARY;
use crate::place::{FileId, Place};
use crate::source::{self, FileFault, FileFaultKind, PassedOver};
use crate::spec::Kind;

/// The most bytes of the libraries of one network together.
const MOST_BYTES: usize = 256 << 20;

/// Reads the libraries that networks name. Gives their files, each with the network that uses it.
pub(super) fn shelve_shared(
    scope: &Scope,
    shelving: &mut Shelving,
    files: &mut Files,
    shown: &dyn Fn(&Path) -> String,
) -> Vec<(FileId, usize)> {
    let mut used = Vec::new();
    for number in 0..shelving.libraries.len() {
        let library = &shelving.libraries[number];
        let Some(network) = library.networks.documents.first().filter(|network| !network.libraries.is_empty()) else {
            continue;
        };
        let home = library.folder.clone();
        let named: Vec<(Place, String)> = (0..network.libraries.len())
            .map(|i| (at!(network.libraries[i]), network.libraries[i].to_string()))
            .collect();
        let inputs = scope.inputs(&home);
        let Some(store) = inputs.store.map(Arc::clone) else { continue };
        let mut read = Read { store: &*store, home: &home, number, shelving, files, shown, bytes: 0, used: Vec::new() };
        for (place, name) in named {
            if let Err((why, help)) = read.library(place, &name) {
                let message = format!("the library `{name}` cannot be used: {why}");
                let mut finding = Finding::new(&LIBRARY, place, message, "not read");
                finding.help(help);
                read.shelving.findings.push(finding);
            }
        }
        used.append(&mut read.used);
    }
    shelving.replace_nothing();
    used
}

/// The reading of the libraries of one network.
struct Read<'r> {
    store: &'r dyn Store,
    home: &'r Path,
    number: usize,
    shelving: &'r mut Shelving,
    files: &'r mut Files,
    shown: &'r dyn Fn(&Path) -> String,
    bytes: usize,
    used: Vec<(FileId, usize)>,
}

impl Read<'_> {
    /// Reads one; or says why it cannot be, and what would mend it.
    fn library(&mut self, place: Place, name: &str) -> Result<(), (String, String)> {
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
            // A folder in another one that is named too.
            if self.used.iter().any(|(other, _)| *other == number) {
                continue;
            }
            self.used.push((number, self.number));
            self.documents(number, name, place);
        }
        let text = |number: &FileId| self.files.get(*number).map_or("", |file| file.text.as_str());
        let mark = mark(texts.iter().map(|(name, number)| (name.as_str(), text(number))));
        let library = SharedLibrary { name: name.to_owned(), folder, files: texts.len(), mark };
        self.shelving.libraries[self.number].shared.push(library);
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

    /// Puts the documents of a file on the shelves.
    fn documents(&mut self, number: FileId, library: &str, named_at: Place) {
        let Some(file) = self.files.get(number) else { return };
        let typed = type_file(number, &file.text);
        // What is wrong with a file that is read as somebody's own is said there.
        if file.home == Home::Shared {
            self.shelving.findings.extend(typed.findings);
        }
        for entry in typed.entries {
            if may_be_shared(entry.kind) {
                self.shelving.put_shared(self.number, entry, Origin::Shared(library.to_owned()));
                continue;
            }
            let place = Place::document(entry.document).below(&"kind", &[]);
            let message =
                format!("the library `{library}` holds the {} `{}`, which cannot be shared", entry.kind, entry.id);
            let mut finding = Finding::new(&LIBRARY, place, message, "not of a library");
            finding.because(named_at, "named here");
            finding.help("a library holds sites, equipment and neighbours; the rest is a network's own");
            self.shelving.findings.push(finding);
        }
    }

    fn fault(&mut self, fault: &FileFault) {
        self.shelving.findings.push(file_fault(fault, std::env::current_dir().ok().as_deref()));
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
        | Kind::Neighbour => true,
        Kind::Network | Kind::Hop | Kind::Record | Kind::Waiver | Kind::Service => false,
    }
}
