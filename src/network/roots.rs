//! What to load and what to report on.
//!
//! A person may name a hop's file, a folder of sites or a whole tree. Rules need the whole network all the same, so what
//! is loaded is the folder of the network that encloses a path, and the path itself limits only what is reported.

use std::fs;
use std::path::{Path, PathBuf};

/// What to load and what to report on.
#[derive(Debug, Clone)]
pub struct Scope {
    /// Folders or files to read, none inside another.
    pub load: Vec<PathBuf>,
    /// Paths the findings must touch.
    pub report: Vec<PathBuf>,
}

impl Scope {
    /// The scope of the paths a person gave.
    #[must_use]
    pub fn of(paths: &[PathBuf]) -> Self {
        let mut load: Vec<PathBuf> =
            paths.iter().map(|path| enclosing_network(path).unwrap_or_else(|| path.clone())).collect();
        load.sort();
        load.dedup();
        let all = load.clone();
        load.retain(|path| !all.iter().any(|other| other != path && path.starts_with(other)));
        Self { load, report: paths.to_vec() }
    }

    /// Whether a file lies under one of the reported paths.
    #[must_use]
    pub fn reports(&self, file: &Path) -> bool {
        self.report.iter().any(|path| file.starts_with(path) || path == Path::new("."))
    }
}

/// The folder above `path` that holds a network document, not looking beyond the root of a repository.
fn enclosing_network(path: &Path) -> Option<PathBuf> {
    let whole = std::path::absolute(path).ok()?;
    // `absolute` keeps the number of trailing parts, so the same number of parts is cut from what was given.
    let first = usize::from(path.is_file());
    for up in first.. {
        let folder = whole.ancestors().nth(up)?;
        if holds_network(folder) {
            return Some(shorten(path, folder));
        }
        if folder.join(".git").exists() {
            return None;
        }
    }
    None
}

/// The folder as an ancestor of the path as given, or in full when the given path does not reach that far up.
fn shorten(given: &Path, folder: &Path) -> PathBuf {
    let same = |candidate: &&Path| std::path::absolute(candidate).is_ok_and(|whole| whole == folder);
    let candidates = given.ancestors().filter(|candidate| !candidate.as_os_str().is_empty());
    match candidates.into_iter().find(same) {
        Some(found) => found.to_path_buf(),
        None if std::path::absolute(".").is_ok_and(|here| here == folder) => PathBuf::from("."),
        None => folder.to_path_buf(),
    }
}

/// Whether a YAML file right in the folder has a line that opens a network document.
fn holds_network(folder: &Path) -> bool {
    let Ok(entries) = fs::read_dir(folder) else { return false };
    entries.flatten().map(|entry| entry.path()).any(|path| {
        let yaml = path.extension().is_some_and(|extension| extension == "yaml" || extension == "yml");
        yaml && crate::source::read(&path)
            .is_ok_and(|source| source.text.lines().any(|line| line.trim_end() == "kind: network"))
    })
}
