//! The one door for bytes: how the files of a network are listed and read, and how anything is written.
//!
//! Whatever a network consists of, YAML, profiles, tiles, maps, comes through a [`Store`]: a [`Folder`] on disk, a
//! [`Revision`] of a git repository, or an [`Overlay`] of texts over either. So what is judged is one state. Nothing but
//! this module opens a file; where it may look is said by one rule, in `fence`.

mod fence;
mod folder;
mod git;
mod given;
mod objects;
mod overlay;
pub mod path;
mod revision;
pub mod write;

use std::ffi::OsString;
use std::fmt;
use std::io::{self, Read, Seek};
use std::path::{Path, PathBuf};

pub use fence::repository_of;
pub use folder::Folder;
pub use git::{Git, GitError, revision_of};
pub use given::{canonical, exists, is_empty_or_missing, is_file, is_folder, read_given};
pub use overlay::Overlay;
pub use revision::Revision;

/// One state of the files around a network. Paths are those a person would use from where they stand.
pub trait Store: fmt::Debug + Send + Sync {
    /// What is at a path, links followed.
    ///
    /// # Errors
    /// Nothing is there, or it may not be read.
    fn look(&self, path: &Path) -> Result<Found, Refused>;

    /// The names in a folder, sorted.
    ///
    /// # Errors
    /// There is no such folder, or it may not be read.
    fn list(&self, folder: &Path) -> Result<Vec<Named>, Refused>;

    /// A regular file of at most `most` bytes, to read or to search through.
    ///
    /// # Errors
    /// There is no such file, it is larger, or it may not be read.
    fn open(&self, path: &Path, most: u64) -> Result<Box<dyn Stream>, Refused>;

    /// All bytes of a regular file of at most `most` bytes.
    ///
    /// # Errors
    /// As [`Store::open`].
    fn read(&self, path: &Path, most: u64) -> Result<Vec<u8>, Refused> {
        read_all(self.open(path, most)?, most)
    }

    /// Says that these files will be read next, each of at most `most` bytes. It changes nothing but how long that takes.
    fn expect(&self, _paths: &[PathBuf], _most: u64) {}

    /// Whether git tracks all there is in this state. `.gitignore` has no say over what is tracked.
    fn is_tracked(&self) -> bool {
        false
    }

    /// Why this state cannot be judged as a whole, if something of it is not to be had.
    fn failure(&self) -> Option<String> {
        None
    }
}

/// The bytes of a file.
pub trait Stream: Read + Seek + Send {}

impl<T: Read + Seek + Send> Stream for T {}

/// What is at a path.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found {
    /// What it is.
    pub what: What,
    /// How many bytes a file has.
    pub bytes: u64,
    /// Its path without links: two names of one folder have the same.
    pub real: PathBuf,
}

/// The two things that are read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum What {
    /// A regular file.
    File,
    /// A folder.
    Folder,
}

/// A name in a folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// The name.
    pub name: OsString,
    /// Whether it is a link.
    pub link: bool,
    /// What it leads to, and the path of that without links; or why it is not read.
    pub what: Result<(What, PathBuf), Refused>,
}

/// Why something is not read. The words never hold anything of what was refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refused {
    /// What sort of trouble it is.
    pub why: Why,
    /// The trouble as one lower-case clause.
    pub detail: String,
}

/// The sorts of trouble.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Why {
    /// There is nothing at the path.
    Missing,
    /// The system refuses to open it, or it is neither a regular file nor a folder.
    Unreadable,
    /// It lies, or a link leads, where a network may not look.
    Outside,
    /// It is larger than it may be.
    TooLarge,
}

impl Refused {
    /// A refusal in words.
    pub fn new(why: Why, detail: impl Into<String>) -> Self {
        Self { why, detail: detail.into() }
    }

    /// What the system says.
    #[must_use]
    pub fn by_system(error: &io::Error) -> Self {
        match error.kind() {
            io::ErrorKind::NotFound | io::ErrorKind::NotADirectory => {
                Self::new(Why::Missing, "there is no such file or folder")
            }
            io::ErrorKind::PermissionDenied => Self::new(Why::Unreadable, "permission to read it is denied"),
            _ => Self::new(Why::Unreadable, error.to_string()),
        }
    }

    /// Something that is neither a file nor a folder.
    #[must_use]
    pub fn irregular() -> Self {
        Self::new(Why::Unreadable, "it is not a regular file")
    }

    /// A file beyond a limit.
    #[must_use]
    pub fn too_large(most: u64) -> Self {
        let (amount, unit) = if most < 4 << 20 { (most >> 10, "KiB") } else { (most >> 20, "MiB") };
        Self::new(Why::TooLarge, format!("the file is larger than {amount} {unit}"))
    }
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.detail)
    }
}

/// Reads to the end, and no further than one byte beyond a limit: files may grow, and some claim no size at all.
fn read_all(stream: impl Read, most: u64) -> Result<Vec<u8>, Refused> {
    let mut bytes = Vec::new();
    stream.take(most + 1).read_to_end(&mut bytes).map_err(|error| Refused::by_system(&error))?;
    if bytes.len() as u64 > most { Err(Refused::too_large(most)) } else { Ok(bytes) }
}
