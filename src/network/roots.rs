//! What to load and what to report on.
//!
//! A person may name a hop's file, a folder of sites or a whole tree. Rules need the whole network all the same, so what
//! is loaded is the folder of the network that encloses a path, and the path itself limits only what is reported.

use std::fs;
use std::path::{Path, PathBuf, absolute};

use crate::source::{self, FileFault};
use crate::spec::{Date, Kind};

/// What to load and what to report on.
#[derive(Debug, Clone)]
pub struct Scope {
    /// Folders or files to read, none inside another.
    pub load: Vec<PathBuf>,
    /// Paths the findings must touch, in full.
    report: Vec<PathBuf>,
    /// What to read instead of what lies in the folders.
    texts: Option<Vec<Text>>,
    /// A text that takes the place of a file: the path as given and in full.
    instead: Option<Instead>,
    /// The day waivers are held against; that of the clock if none is given.
    pub today: Option<Date>,
}

/// A text that is not yet in its file, or not as it stands there.
#[derive(Debug, Clone)]
struct Instead {
    path: PathBuf,
    full: PathBuf,
    text: String,
}

/// A file by its path and what is in it, or why that is not to be had.
pub type Text = (PathBuf, Result<String, FileFault>);

impl Scope {
    /// The scope of the paths a person gave.
    #[must_use]
    pub fn of(paths: &[PathBuf]) -> Self {
        let mut load: Vec<PathBuf> =
            paths.iter().map(|path| enclosing_network(path).unwrap_or_else(|| path.clone())).collect();
        load.sort();
        load.dedup();
        let all = load.clone();
        load.retain(|path| !all.iter().any(|other| other != path && in_full(path).starts_with(in_full(other))));
        Self { load, report: paths.iter().map(|path| in_full(path)).collect(), texts: None, instead: None, today: None }
    }

    /// The same scope with these files instead of those that lie in the folders: another state of the same network.
    #[must_use]
    pub fn with_texts(self, texts: Vec<Text>) -> Self {
        Self { texts: Some(texts), ..self }
    }

    /// The files to read instead of those that lie in the folders.
    #[must_use]
    pub fn texts(&self) -> Option<&[Text]> {
        self.texts.as_deref()
    }

    /// The same with a text that takes the place of a file, which need not be there.
    #[must_use]
    pub fn with_text(self, path: &Path, text: String) -> Self {
        Self { instead: Some(Instead { path: path.to_path_buf(), full: in_full(path), text }), ..self }
    }

    /// The same on a day of one's own choosing.
    #[must_use]
    pub fn on(self, today: Option<Date>) -> Self {
        Self { today, ..self }
    }

    /// The text to take instead of a file.
    pub(super) fn text_of(&self, file: &Path) -> Option<&str> {
        self.instead.as_ref().filter(|instead| instead.full == in_full(file)).map(|instead| instead.text.as_str())
    }

    /// The files to read, with the one that stands only in a text.
    pub(super) fn with_instead(&self, files: &mut Vec<PathBuf>) {
        let Some(instead) = &self.instead else { return };
        if files.iter().any(|file| in_full(file) == instead.full) {
            return;
        }
        // Named from the folder that is loaded, as if it had been found there.
        let inside = self.load.iter().find_map(|root| Some(root.join(instead.full.strip_prefix(in_full(root)).ok()?)));
        files.push(inside.unwrap_or_else(|| instead.path.clone()));
    }

    /// Whether a file lies under one of the reported paths.
    #[must_use]
    pub fn reports(&self, file: &Path) -> bool {
        let file = in_full(file);
        self.report.iter().any(|path| file.starts_with(path))
    }
}

/// The path from the root of the file system, without `.` and `..`; links are not followed.
fn in_full(path: &Path) -> PathBuf {
    let whole = absolute(path).unwrap_or_else(|_| path.to_path_buf());
    whole.components().fold(PathBuf::new(), |mut full, part| {
        match part {
            std::path::Component::ParentDir => {
                full.pop();
            }
            part => full.push(part),
        }
        full
    })
}

/// The folder at or above `path` that holds a network document, not looking beyond the root of a repository.
///
/// It is named from where the path was named: `examples/ridge/hops` gives `examples/ridge`, `hops` gives `.`, and `.` in a
/// folder of hops gives `..`.
fn enclosing_network(path: &Path) -> Option<PathBuf> {
    let mut folder = if path.is_file() { parent(path) } else { path.to_path_buf() };
    loop {
        if holds_network(&folder) {
            return Some(folder);
        }
        let full = in_full(&folder);
        if folder.join(".git").exists() || full.parent().is_none() {
            return None;
        }
        folder = parent(&folder);
    }
}

/// The folder above, as short as it can be named.
fn parent(path: &Path) -> PathBuf {
    match path.components().next_back() {
        None | Some(std::path::Component::CurDir) => PathBuf::from(".."),
        Some(std::path::Component::ParentDir) => path.join(".."),
        Some(_) => match path.parent() {
            Some(above) if above.as_os_str().is_empty() => PathBuf::from("."),
            Some(above) => above.to_path_buf(),
            None => path.to_path_buf(),
        },
    }
}

/// Whether a YAML file right in the folder holds a network document.
fn holds_network(folder: &Path) -> bool {
    let Ok(entries) = fs::read_dir(folder) else { return false };
    entries.flatten().map(|entry| entry.path()).any(|path| {
        let yaml = path.extension().is_some_and(|extension| extension == "yaml" || extension == "yml");
        yaml && source::read(&path).is_ok_and(|source| opens_network(&source.text))
    })
}

/// Most files do not even have the word in them and need not be parsed for this.
fn opens_network(text: &str) -> bool {
    let word = Kind::Network.word();
    let is_network = |document: &source::Document| {
        let kind = document.get(document.root(), "kind").map(|(_, value)| document.resolve(value));
        kind.and_then(|value| document.text(value)) == Some(word)
    };
    text.contains(word) && source::parse(text).documents.iter().any(is_network)
}

#[cfg(test)]
mod tests {
    use super::{in_full, parent};
    use std::path::Path;

    #[test]
    fn the_folder_above_is_named_from_where_one_stands() {
        for (path, above) in [("a/b", "a"), ("a", "."), (".", ".."), ("..", "../.."), ("./a", "."), ("/", "/")] {
            assert_eq!(parent(Path::new(path)), Path::new(above), "{path}");
        }
    }

    #[test]
    fn a_full_path_has_no_detours() {
        assert_eq!(in_full(Path::new("/a/./b/../c")), Path::new("/a/c"));
        assert_eq!(in_full(Path::new("/../a")), Path::new("/a"));
    }
}
