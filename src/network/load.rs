//! Reading: a scope in; texts, libraries and findings out.

use std::path::{Path, PathBuf};

use rayon::prelude::*;

use super::enclosing::texts_right_in;
use super::exclude::{by_networks, of_texts};
use super::faults::file_fault;
use super::files::{Files, SourceFile};
use super::inherit::{faults, gather};
use super::library::Library;
use super::parts::shelve_standard;
use super::profile_file::read_profiles;
use super::requires::{asks_for, unmet};
use super::scope::{Root, Scope, Stray};
use super::shared::{read_shared, shelve_shared};
use super::shelving::Shelving;
use super::typing::{TypedFile, type_file};
use crate::door::path::shown;
use crate::finding::faults::{NO_NETWORK, PROGRAM_TOO_OLD};
use crate::finding::{Finding, Spot};
use crate::place::FileId;
use crate::source::{self, FileFault, FileFaultKind, SourceText};
use crate::spec::LeastVersion;

/// Everything that was read.
#[derive(Debug)]
pub struct Loaded {
    /// The texts.
    pub files: Files,
    /// One library a network, in order of folder.
    pub libraries: Vec<Library>,
    /// What is wrong with the files themselves.
    pub findings: Vec<Finding>,
    /// Files and folders that patterns say to pass over.
    pub passed_over: Vec<String>,
}

/// The most bytes of all texts together. Some twelve gigabytes of memory bear them; 100,000 hops have a quarter of that.
const MOST_BYTES: usize = 2 << 30;
/// Files read side by side before their bytes are counted.
const AT_ONCE: usize = 1024;

/// Reads and types everything in scope, with the gate it has itself.
#[must_use]
pub(super) fn load_own(scope: &Scope) -> Loaded {
    let here = std::env::current_dir().ok();
    let here = here.as_deref();
    let mut texts = Texts::default();
    for root in scope.roots() {
        texts.read(root);
    }
    let mut findings: Vec<Finding> = scope.strays().iter().filter_map(|stray| no_network(stray, here)).collect();
    findings.extend(texts.faults.iter().map(|fault| file_fault(fault, here)));
    findings.extend(texts.leave_newer(here));
    let named = |source: SourceText| SourceFile::new(shown(&source.path, here), source.path, source.text);
    let mut files = Files { list: texts.list.into_iter().map(named).collect(), ..Files::default() };
    let folders: Vec<PathBuf> =
        files.list.iter().map(|file| file.origin.parent().map(Path::to_path_buf).unwrap_or_default()).collect();

    // What hops take in from elsewhere is known before they are typed.
    let shared = read_shared(scope, &folders, &mut files, &|path| shown(path, here));
    let givers = gather(&files, &folders, &shared.list);
    let own = (0..).map(FileId).zip(folders.iter().zip(&files.list)).collect::<Vec<_>>();
    let typed: Vec<TypedFile> = own
        .into_par_iter()
        .map(|(number, (folder, file))| type_file(number, &file.text, givers.around(folder)))
        .collect();
    for file in &typed {
        file.note_in(&mut files);
    }
    findings.extend(givers.all().into_iter().flat_map(faults));

    let mut shelving = Shelving::new(&folders, &typed);
    for (folder, file) in folders.iter().zip(typed) {
        findings.extend(file.findings);
        for entry in file.entries {
            shelving.put(folder, entry);
        }
    }
    let used = shelve_shared(shared, &mut shelving, &mut files);
    shelve_standard(&mut shelving, &mut files, &used);
    shelving.follow_mentions();
    read_profiles(scope, &mut shelving.libraries, &mut files, &|path| shown(path, here), &mut findings);
    findings.extend(shelving.findings);
    let passed_over = texts.passed_over.iter().map(|path| shown(path, here)).collect();
    Loaded { files, libraries: shelving.libraries, findings, passed_over }
}

/// What was read, file by file.
#[derive(Default)]
struct Texts {
    list: Vec<SourceText>,
    passed_over: Vec<PathBuf>,
    faults: Vec<FileFault>,
    bytes: usize,
}

impl Texts {
    fn read(&mut self, root: &Root) {
        let store = &*root.store;
        let exclude = of_texts(&root.path, texts_right_in(store, &root.path).map(|source| source.text));
        let found = source::discover(store, &root.path, &exclude, source::MAX_ENTRIES);
        let (mut list, mut faults) = (Vec::new(), found.faults);
        for some in found.files.chunks(AT_ONCE) {
            store.expect(some, source::MAX_BYTES);
            let read: Vec<_> = some.par_iter().map(|path| source::read(store, path)).collect();
            for text in read {
                match text {
                    Ok(text) => {
                        self.bytes += text.text.len();
                        list.push(text);
                    }
                    Err(fault) => faults.push(fault),
                }
            }
            if self.bytes > MOST_BYTES {
                let detail =
                    format!("all files together are larger than {} MiB; the rest is not read", MOST_BYTES >> 20);
                faults.push(FileFault::new(&root.path, FileFaultKind::TooMany, detail));
                break;
            }
        }
        // A file that was named, lies in no network and does not say what it describes is somebody else's.
        list.retain(|text: &SourceText| text.path != root.path || text.text.contains("kind"));
        // A network further down says itself what of its folder it passes over.
        let over = by_networks(&list);
        self.passed_over.extend(found.passed_over);
        self.passed_over.extend(list.iter().map(|text| &text.path).filter(|path| over(path)).cloned());
        faults.retain(|fault| !over(&fault.path));
        list.retain(|text| !over(&text.path));
        self.faults.append(&mut faults);
        self.list.append(&mut list);
    }
}

impl Texts {
    /// Leaves the networks alone that ask for a newer program, and says which.
    fn leave_newer(&mut self, here: Option<&Path>) -> Vec<Finding> {
        let newer: Vec<(PathBuf, PathBuf, LeastVersion)> = self
            .list
            .iter()
            .filter_map(|source| {
                let least = unmet(&source.text)?;
                Some((source.path.parent()?.to_path_buf(), source.path.clone(), least))
            })
            .collect();
        self.list.retain(|source| !newer.iter().any(|(folder, ..)| source.path.starts_with(folder)));
        newer.iter().map(|(_, path, least)| too_old(&shown(path, here), *least)).collect()
    }
}

/// What is said of a network that asks for a newer program.
fn too_old(path: &str, least: LeastVersion) -> Finding {
    let message = asks_for(path, least);
    let mut finding = Finding::new(&PROGRAM_TOO_OLD, Spot::Path(path.to_owned()), message, "asks for a newer program");
    finding.help(format!("install hopwright {least} or newer"));
    finding
}

/// A folder that was named, holds YAML and belongs to no network. What its files say is not looked at.
fn no_network(stray: &Stray, here: Option<&Path>) -> Option<Finding> {
    if !stray.yaml && stray.networks.is_empty() {
        return None;
    }
    let path = shown(&stray.path, here);
    let path = if path.is_empty() { ".".to_owned() } else { path };
    let message = format!("{path}: no network document is found in this folder or above it");
    let mut finding = Finding::new(&NO_NETWORK, Spot::Path(path), message, "nothing of it is read");
    finding.help(if stray.networks.is_empty() {
        "add a file with `kind: network`, or check the folder that holds one".to_owned()
    } else {
        let networks: Vec<String> = stray.networks.iter().map(|path| shown(path, here)).collect();
        format!("networks here: {}; name those that are meant", networks.join(", "))
    });
    Some(finding)
}
