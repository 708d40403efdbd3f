//! Which folder is a network: the one whose YAML files have a network document among them.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::exclude::opens_network;
use crate::door::path::{above, full};
use crate::door::{Folder, Store, is_file, repository_of};
use crate::source::{self, PassedOver, SourceText, is_yaml};

/// The most names looked at below a folder that is no network, to say where networks are.
const MOST_NAMES: usize = 20_000;
/// The most files read for that.
const MOST_FILES: usize = 2_000;
/// The most networks that are named.
const MOST_NAMED: usize = 20;

/// The folder at or above `path` that holds a network document, not looking beyond the root of a repository.
///
/// It is named from where the path was named: `examples/ridge/hops` gives `examples/ridge`, `hops` gives `.`, and `.` in a
/// folder of hops gives `..`.
pub(super) fn enclosing_network(path: &Path) -> Option<(PathBuf, Arc<dyn Store>)> {
    let mut folder = if is_file(path) { above(path) } else { path.to_path_buf() };
    loop {
        let store: Arc<dyn Store> = Arc::new(Folder::around(&folder));
        if holds_network(&*store, &folder) {
            return Some((folder, store));
        }
        let whole = full(&folder);
        if repository_of(&whole).as_ref() == Some(&whole) || whole.parent().is_none() {
            return None;
        }
        folder = above(&folder);
    }
}

/// Whether a YAML file right in the folder holds a network document.
fn holds_network(store: &dyn Store, folder: &Path) -> bool {
    texts_right_in(store, folder).any(|source| opens_network(&source.text))
}

/// The texts of the YAML files right in a folder, as far as they can be read.
pub(super) fn texts_right_in<'s>(store: &'s dyn Store, folder: &'s Path) -> impl Iterator<Item = SourceText> + 's {
    let names = store.list(folder).unwrap_or_default().into_iter().map(|named| folder.join(named.name));
    let wanted = |path: &PathBuf| {
        let hidden = path.file_name().is_some_and(|name| name.as_encoded_bytes().starts_with(b"."));
        is_yaml(path) && !hidden
    };
    names.filter(wanted).filter_map(|path| source::read(store, &path).ok())
}

/// What is found in a folder that is no network: whether there is any YAML, and the networks below it.
pub(super) fn below(folder: &Path) -> (bool, Vec<PathBuf>) {
    let store = Folder::around(folder);
    let found = source::discover(&store, folder, &PassedOver::default(), MOST_NAMES);
    let mut networks: Vec<PathBuf> = Vec::new();
    for file in found.files.iter().take(MOST_FILES) {
        let home = file.parent().unwrap_or(folder);
        if networks.len() >= MOST_NAMED {
            break;
        }
        if !networks.iter().any(|known| home.starts_with(known))
            && source::read(&store, file).is_ok_and(|source| opens_network(&source.text))
        {
            networks.push(home.to_path_buf());
        }
    }
    (!found.files.is_empty(), networks)
}
