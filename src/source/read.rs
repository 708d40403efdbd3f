//! The text of a file, or what is wrong with it.

use std::path::{Path, PathBuf};

use super::lines::LineIndex;
use crate::door::{Refused, Store, Why};

/// The largest file of YAML that is read: 1 MiB.
pub const MAX_BYTES: u64 = 1 << 20;

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
    /// It lies, or a link leads, where a network may not look.
    Outside,
    /// A symbolic link leads back to a folder that contains it.
    SymlinkLoop,
    /// A folder looks like the store of a git repository.
    Repository,
    /// The bytes are not UTF-8.
    NotUtf8,
    /// The file is larger than it may be.
    TooLarge,
    /// There is more in the folder than is read.
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

    /// What the door refused.
    #[must_use]
    pub fn refused(path: &Path, refused: Refused) -> Self {
        let kind = match refused.why {
            Why::Missing => FileFaultKind::Missing,
            Why::Unreadable => FileFaultKind::Unreadable,
            Why::Outside => FileFaultKind::Outside,
            Why::TooLarge => FileFaultKind::TooLarge,
        };
        Self::new(path, kind, refused.detail)
    }
}

/// Reads a file as UTF-8.
///
/// # Errors
/// A [`FileFault`] if the file is missing, unreadable, not a regular file, larger than [`MAX_BYTES`], or not UTF-8; the
/// last says which byte is wrong.
pub fn read(store: &dyn Store, path: &Path) -> Result<SourceText, FileFault> {
    let bytes = store.read(path, MAX_BYTES).map_err(|refused| FileFault::refused(path, refused))?;
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

/// Says where the first byte is that no UTF-8 text has there.
fn bad_byte(bytes: &[u8], at: usize) -> String {
    let (before, rest) = bytes.split_at(at);
    let before = String::from_utf8_lossy(before);
    let place = LineIndex::new(&before).position(at);
    let byte = rest.first().copied().unwrap_or_default();
    format!("byte 0x{byte:02x} at offset {at} (line {}, column {}) is not UTF-8", place.line, place.column)
}
