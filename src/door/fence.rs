//! Where a network may look: the one rule for YAML, profiles, tiles, maps and libraries.
//!
//! What is read lies, with all links followed, below the root of the repository that the network is in, or below the
//! folder of the network where there is no repository. Names that start with a dot are not read, so that neither the
//! store of git nor the settings of other programs can be quoted; the folder of the network itself may have one.

use std::fs;
use std::path::{Path, PathBuf};

use super::path::full;
use super::{Refused, Why};

/// The bounds of one network.
#[derive(Debug, Clone)]
pub(super) struct Fence {
    /// What was named, in full.
    pub(super) named: PathBuf,
    /// The same without links.
    pub(super) home: PathBuf,
    /// The folder nothing is read outside of, without links.
    pub(super) root: PathBuf,
}

impl Fence {
    /// The bounds of the network in a folder, or of a single file.
    pub(super) fn around(path: &Path) -> Self {
        let named = full(path);
        let home = fs::canonicalize(&named).unwrap_or_else(|_| named.clone());
        // By the name first: a folder in a checkout that is a link out of it does not bring its own bounds.
        let root = repository_of(&named).or_else(|| repository_of(&home));
        let root = root.map_or_else(|| home.clone(), |root| fs::canonicalize(&root).unwrap_or(root));
        Self { named, home, root }
    }

    /// Whether something may be read, by its path without links.
    pub(super) fn admit(&self, real: &Path) -> Result<(), Refused> {
        let Ok(below_root) = real.strip_prefix(&self.root) else { return Err(outside()) };
        if below_root.iter().any(|part| part.eq_ignore_ascii_case(".git")) {
            return Err(Refused::new(Why::Outside, "the store of git is not read"));
        }
        let below = real.strip_prefix(&self.home).unwrap_or(below_root);
        let hidden = |part: &std::ffi::OsStr| part.as_encoded_bytes().starts_with(b".");
        let parts = if below.ends_with(".gitignore") { below.parent().unwrap_or(below) } else { below };
        if parts.iter().any(hidden) {
            return Err(Refused::new(Why::Outside, "names that start with a dot are not read"));
        }
        Ok(())
    }
}

/// What is said of everything that is refused, whatever it is.
pub(super) fn outside() -> Refused {
    Refused::new(
        Why::Outside,
        "it leads out of the repository, or of the folder of a network that is in none; not read",
    )
}

/// The root of the repository around a path, going by its name: the nearest folder with a `.git`.
#[must_use]
pub fn repository_of(path: &Path) -> Option<PathBuf> {
    let whole = full(path);
    whole.ancestors().find(|folder| fs::symlink_metadata(folder.join(".git")).is_ok()).map(Path::to_path_buf)
}
