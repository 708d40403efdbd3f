//! Finding specification files.
//!
//! A folder comes in; what goes out is a sorted list of files, and a [`FileFault`] for each thing that could not be
//! walked. A fault never ends the walk. No folder is walked twice, so that links among folders cannot multiply.

use std::collections::HashSet;
use std::ffi::OsStr;
use std::path::{Path, PathBuf};

use super::passed_over::PassedOver;
use super::read::{FileFault, FileFaultKind};
use crate::door::{Named, Store, What, Why};

/// The most names that one walk looks at.
pub const MAX_ENTRIES: usize = 4_000_000;

/// The deepest folder below the one that is walked.
pub const MAX_FOLDERS: usize = 64;

/// What a walk found.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Discovery {
    /// The specification files, sorted by path.
    pub files: Vec<PathBuf>,
    /// Specification files, and folders, that patterns say to pass over, sorted.
    pub passed_over: Vec<PathBuf>,
    /// What could not be walked, in the order met.
    pub faults: Vec<FileFault>,
}

/// Finds the `.yaml` and `.yml` files under `root`.
///
/// Symbolic links are followed as far as the store allows. Names that start with a dot are passed over, except that of
/// `root` itself, and so is what `exclude` names and, unless git tracks it, what `.gitignore` does. If `root` is a file, it is the one file
/// found, whatever its extension.
#[must_use]
pub fn discover(store: &dyn Store, root: &Path, exclude: &PassedOver, most: usize) -> Discovery {
    let mut found = Discovery::default();
    match store.look(root) {
        Ok(at) if at.what == What::File => found.files.push(root.to_path_buf()),
        Ok(at) => {
            let above = if store.is_tracked() {
                PassedOver::default()
            } else {
                PassedOver::above(store, root, &mut found.faults)
            };
            let mut walk = Walk { store, exclude, most, found, seen: HashSet::new(), later: Vec::new(), count: 0 };
            walk.folder(root, &at.real, &above, 0);
            while let Some((path, real, over, depth)) = walk.later.pop() {
                walk.folder(&path, &real, &over, depth);
            }
            found = walk.found;
            found.files.sort();
            found.passed_over.sort();
        }
        Err(refused) => found.faults.push(FileFault::refused(root, refused)),
    }
    found
}

struct Walk<'s> {
    store: &'s dyn Store,
    exclude: &'s PassedOver,
    most: usize,
    found: Discovery,
    /// Folders that were walked, without links.
    seen: HashSet<PathBuf>,
    /// Links to folders: walked after all that is there under its own name.
    later: Vec<(PathBuf, PathBuf, PassedOver, usize)>,
    count: usize,
}

impl Walk<'_> {
    fn folder(&mut self, path: &Path, real: &Path, above: &PassedOver, depth: usize) {
        if self.count > self.most || !self.seen.insert(real.to_path_buf()) {
            return;
        }
        let names = match self.store.list(path) {
            Ok(names) => names,
            Err(refused) => return self.found.faults.push(FileFault::refused(path, refused)),
        };
        self.count += names.len();
        if self.count > self.most || depth > MAX_FOLDERS {
            let detail = format!("only {} names in {MAX_FOLDERS} folders one in another are looked at", self.most);
            return self.found.faults.push(FileFault::new(path, FileFaultKind::TooMany, detail));
        }
        if is_store_of_git(&names) {
            let detail = "it looks like the store of a git repository (`HEAD`, `objects`, `refs`); take it out";
            self.found.faults.push(FileFault::new(path, FileFaultKind::Repository, detail));
        }
        let has_patterns = !self.store.is_tracked() && names.iter().any(|named| named.name == ".gitignore");
        let own = has_patterns.then(|| above.with_file_of(self.store, path, &mut self.found.faults));
        let over = own.as_ref().unwrap_or(above);
        for named in names.iter().filter(|named| !is_hidden(&named.name)) {
            self.entry(&path.join(&named.name), real, named, over, depth);
        }
    }

    fn entry(&mut self, path: &Path, folder: &Path, named: &Named, over: &PassedOver, depth: usize) {
        let is_folder = matches!(&named.what, Ok((What::Folder, _)));
        if !is_folder && named.what.is_ok() && !is_yaml(path) {
            return;
        }
        if over.has(path, is_folder) || self.exclude.has(path, is_folder) {
            self.found.passed_over.push(path.to_path_buf());
            return;
        }
        match &named.what {
            Ok((What::File, _)) => self.found.files.push(path.to_path_buf()),
            Ok((What::Folder, real)) if !named.link => self.folder(path, real, over, depth + 1),
            Ok((What::Folder, real)) if folder.starts_with(real) => {
                let detail = "the link leads back to a folder that it lies in";
                self.found.faults.push(FileFault::new(path, FileFaultKind::SymlinkLoop, detail));
            }
            Ok((What::Folder, real)) => self.later.push((path.to_path_buf(), real.clone(), over.clone(), depth + 1)),
            Err(refused) if named.link && refused.why == Why::Missing => {
                if is_yaml(path) {
                    let detail = "the link leads to nothing";
                    self.found.faults.push(FileFault::new(path, FileFaultKind::Unreadable, detail));
                }
            }
            Err(refused) if named.link || is_yaml(path) => {
                self.found.faults.push(FileFault::refused(path, refused.clone()));
            }
            // A folder that another repository keeps is no file that may be left out.
            Err(_) => {
                if let Err(refused) = self.store.look(path)
                    && self.store.failure().is_some()
                {
                    self.found.faults.push(FileFault::refused(path, refused));
                }
            }
        }
    }
}

/// Whether git would take a folder with these names for a repository of its own.
fn is_store_of_git(names: &[Named]) -> bool {
    ["HEAD", "objects", "refs"].iter().all(|wanted| names.iter().any(|named| named.name == *wanted))
}

fn is_hidden(name: &OsStr) -> bool {
    name.as_encoded_bytes().starts_with(b".")
}

/// Whether a file is YAML by its name.
#[must_use]
pub fn is_yaml(path: &Path) -> bool {
    path.extension()
        .and_then(OsStr::to_str)
        .is_some_and(|extension| extension.eq_ignore_ascii_case("yaml") || extension.eq_ignore_ascii_case("yml"))
}
