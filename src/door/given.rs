//! What a person names on the command line, beside a network: a baseline, a folder to write into.

use std::fs;
use std::path::{Path, PathBuf};

use super::path::full;
use super::{Folder, Refused, Store as _};

/// A file that was named, read under the rule that holds for networks: a link in a checkout does not lead out of it.
///
/// # Errors
/// It is not there, too large, no regular file, or a link out of its repository.
pub fn read_given(path: &Path, most: u64) -> Result<Vec<u8>, Refused> {
    Folder::around(path).read(path, most)
}

/// Whether there is something at a path.
#[must_use]
pub fn exists(path: &Path) -> bool {
    path.exists()
}

/// Whether a path leads to a folder.
#[must_use]
pub fn is_folder(path: &Path) -> bool {
    path.is_dir()
}

/// Whether a path leads to a file.
#[must_use]
pub fn is_file(path: &Path) -> bool {
    path.is_file()
}

/// Whether a folder may be filled: nothing is there, or a folder with nothing in it.
#[must_use]
pub fn is_empty_or_missing(path: &Path) -> bool {
    match fs::read_dir(path) {
        Ok(mut entries) => entries.next().is_none(),
        Err(_) => !path.exists(),
    }
}

/// The full path with links followed, as far as there is something.
#[must_use]
pub fn canonical(path: &Path) -> PathBuf {
    let whole = full(path);
    fs::canonicalize(&whole).unwrap_or(whole)
}
