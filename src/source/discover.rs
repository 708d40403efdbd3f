//! Finding specification files and reading them.
//!
//! A path comes in: a single file, or a folder to walk. What goes out is a sorted list of files,
//! or the text of one, and a [`FileFault`] for each thing that could not be walked or read. A
//! fault never ends the walk. Limits on size and number are checked before memory is spent, and
//! only regular files are opened, so that neither a device nor a pipe can hold us up.

use std::ffi::OsStr;
use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Path, PathBuf};

use walkdir::{DirEntry, WalkDir};

use super::lines::LineIndex;

/// The most specification files that one walk collects.
pub const MAX_FILES: usize = 50_000;

/// The most names that one walk looks at, so that links among folders cannot multiply for ever.
pub const MAX_ENTRIES: usize = 1_000_000;

/// The largest file that is read: 1 MiB.
pub const MAX_BYTES: u64 = 1 << 20;

/// What a walk found.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Discovery {
    /// The specification files, sorted by path.
    pub files: Vec<PathBuf>,
    /// What could not be walked, in the order met.
    pub faults: Vec<FileFault>,
}

/// A file or folder that could not be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FileFault {
    /// The file or folder.
    pub path: PathBuf,
    /// What sort of trouble it is.
    pub kind: FileFaultKind,
    /// The trouble in words, as one lower-case clause.
    pub detail: String,
}

/// The sorts of trouble with a file or folder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum FileFaultKind {
    /// There is nothing at the path.
    Missing,
    /// The system refuses to open it, or it is neither file nor folder.
    Unreadable,
    /// A symbolic link leads back to a folder that contains it.
    SymlinkLoop,
    /// The bytes are not UTF-8.
    NotUtf8,
    /// The file is larger than [`MAX_BYTES`].
    TooLarge,
    /// There is more in the folder than [`MAX_FILES`] or [`MAX_ENTRIES`] allow.
    TooMany,
}

/// The text of a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SourceText {
    /// Where it was read from.
    pub path: PathBuf,
    /// The text as it stands in the file, byte-order mark included: byte offsets are file offsets.
    pub text: String,
}

impl FileFault {
    /// A fault of a file.
    pub fn new(path: &Path, kind: FileFaultKind, detail: impl Into<String>) -> Self {
        Self { path: path.to_path_buf(), kind, detail: detail.into() }
    }

    fn from_io(path: &Path, error: &io::Error) -> Self {
        match error.kind() {
            io::ErrorKind::NotFound => Self::new(path, FileFaultKind::Missing, "there is no such file or folder"),
            io::ErrorKind::PermissionDenied => {
                Self::new(path, FileFaultKind::Unreadable, "permission to read it is denied")
            }
            _ => Self::new(path, FileFaultKind::Unreadable, error.to_string()),
        }
    }

    /// The fault of a file beyond [`MAX_BYTES`].
    #[must_use]
    pub fn too_large(path: &Path) -> Self {
        let detail = format!("the file is larger than {} KiB", MAX_BYTES / 1024);
        Self::new(path, FileFaultKind::TooLarge, detail)
    }
}

/// Finds the `.yaml` and `.yml` files under `root`.
///
/// Symbolic links are followed. Names that start with a dot are passed over, except that of
/// `root` itself. If `root` is a file, it is the one file found, whatever its extension.
#[must_use]
pub fn discover(root: &Path) -> Discovery {
    match fs::metadata(root) {
        Ok(found) if found.is_dir() => walk(root, MAX_FILES),
        Ok(_) => Discovery { files: vec![root.to_path_buf()], faults: Vec::new() },
        Err(error) => Discovery { files: Vec::new(), faults: vec![FileFault::from_io(root, &error)] },
    }
}

fn walk(root: &Path, max_files: usize) -> Discovery {
    let mut found = Discovery::default();
    let visible = |entry: &DirEntry| entry.depth() == 0 || !is_hidden(entry.path());
    let entries = WalkDir::new(root).follow_links(true).sort_by_file_name().into_iter().filter_entry(visible);

    for (count, entry) in entries.enumerate() {
        match entry {
            Ok(entry) if !entry.file_type().is_dir() && is_yaml(entry.path()) => {
                found.files.push(entry.into_path());
            }
            Ok(_) => {}
            Err(error) => found.faults.extend(walk_fault(root, &error)),
        }
        if found.files.len() > max_files || count >= MAX_ENTRIES {
            found.files.truncate(max_files);
            let detail = format!("only {max_files} specification files among {MAX_ENTRIES} names are taken");
            found.faults.push(FileFault::new(root, FileFaultKind::TooMany, detail));
            break;
        }
    }
    found.files.sort();
    found
}

/// Words a walk's error, unless it concerns a name that the walk would have passed over.
fn walk_fault(root: &Path, error: &walkdir::Error) -> Option<FileFault> {
    let path = error.path().unwrap_or(root);
    if error.depth() > 0 && is_hidden(path) {
        return None;
    }
    if let Some(ancestor) = error.loop_ancestor() {
        let detail = format!("the link leads back to {}", ancestor.display());
        return Some(FileFault::new(path, FileFaultKind::SymlinkLoop, detail));
    }
    match error.io_error() {
        Some(gone) if error.depth() > 0 && gone.kind() == io::ErrorKind::NotFound => {
            is_yaml(path).then(|| FileFault::new(path, FileFaultKind::Unreadable, "the link leads to nothing"))
        }
        Some(other) => Some(FileFault::from_io(path, other)),
        None => Some(FileFault::new(path, FileFaultKind::Unreadable, error.to_string())),
    }
}

/// Whether a walk would take a file: `.yaml` or `.yml`, and no part of its path below the root starts with a dot.
#[must_use]
pub fn is_wanted(below_root: &Path) -> bool {
    is_yaml(below_root) && below_root.iter().all(|part| !part.as_encoded_bytes().starts_with(b"."))
}

fn is_hidden(path: &Path) -> bool {
    path.file_name().is_some_and(|name| name.as_encoded_bytes().starts_with(b"."))
}

fn is_yaml(path: &Path) -> bool {
    path.extension()
        .and_then(OsStr::to_str)
        .is_some_and(|extension| extension.eq_ignore_ascii_case("yaml") || extension.eq_ignore_ascii_case("yml"))
}

/// Reads a file as UTF-8.
///
/// # Errors
///
/// A [`FileFault`] if the file is missing, unreadable, not a regular file, larger than
/// [`MAX_BYTES`], or not UTF-8; the last says which byte is wrong.
pub fn read(path: &Path) -> Result<SourceText, FileFault> {
    decode(path, read_bytes(path)?)
}

/// The text in the bytes of a file, wherever they were read from.
///
/// # Errors
///
/// A [`FileFault`] if there are more than [`MAX_BYTES`] of them or they are not UTF-8.
pub fn decode(path: &Path, bytes: Vec<u8>) -> Result<SourceText, FileFault> {
    if bytes.len() as u64 > MAX_BYTES {
        return Err(FileFault::too_large(path));
    }
    if bytes.starts_with(b"\xFF\xFE") || bytes.starts_with(b"\xFE\xFF") {
        let detail = "this is UTF-16, save it as UTF-8";
        return Err(FileFault::new(path, FileFaultKind::NotUtf8, detail));
    }
    match String::from_utf8(bytes) {
        Ok(text) => Ok(SourceText { path: path.to_path_buf(), text }),
        Err(error) => {
            let at = error.utf8_error().valid_up_to();
            Err(FileFault::new(path, FileFaultKind::NotUtf8, bad_byte(error.as_bytes(), at)))
        }
    }
}

fn read_bytes(path: &Path) -> Result<Vec<u8>, FileFault> {
    let unreadable = |error: io::Error| FileFault::from_io(path, &error);
    // Asked of the path, not of an open file: opening a pipe waits for its other end.
    let found = fs::metadata(path).map_err(unreadable)?;
    if !found.is_file() {
        return Err(FileFault::new(path, FileFaultKind::Unreadable, "it is not a regular file"));
    }
    if found.len() > MAX_BYTES {
        return Err(FileFault::too_large(path));
    }

    let mut bytes = Vec::with_capacity(usize::try_from(found.len()).unwrap_or_default() + 1);
    // The file may grow while it is read, and some files claim no size at all.
    let mut limited = File::open(path).map_err(unreadable)?.take(MAX_BYTES + 1);
    limited.read_to_end(&mut bytes).map_err(unreadable)?;
    if limited.limit() == 0 {
        return Err(FileFault::too_large(path));
    }
    Ok(bytes)
}

/// Says where the first byte is that no UTF-8 text has there.
fn bad_byte(bytes: &[u8], at: usize) -> String {
    let (before, rest) = bytes.split_at(at);
    let before = String::from_utf8_lossy(before);
    let place = LineIndex::new(&before).position(at);
    let byte = rest.first().copied().unwrap_or_default();
    format!("byte 0x{byte:02x} at offset {at} (line {}, column {}) is not UTF-8", place.line, place.column)
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::{FileFaultKind, walk};

    #[test]
    fn a_walk_stops_only_at_one_file_too_many() {
        let folder = tempfile::tempdir().expect("a temporary folder");
        for name in ["a.yaml", "b.yaml", "c.txt"] {
            fs::write(folder.path().join(name), "").expect("writable");
        }
        assert_eq!(walk(folder.path(), 2).faults, []);
        let cut = walk(folder.path(), 1);
        assert_eq!(cut.files, [folder.path().join("a.yaml")]);
        assert_eq!(cut.faults[0].kind, FileFaultKind::TooMany);
    }
}
