//! A folder on disk.

use std::collections::HashMap;
use std::ffi::OsStr;
use std::fs::{self, File};
use std::io::{self, Read, Seek, SeekFrom};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use walkdir::WalkDir;

use super::fence::Fence;
use super::path::full;
use super::{Found, Named, Refused, Store, Stream, What};

/// The files of a network as they lie on disk.
#[derive(Debug)]
pub struct Folder {
    fence: Fence,
    /// Folders by their full name, without links: most files of a network lie beside others.
    known: Mutex<HashMap<PathBuf, PathBuf>>,
}

impl Folder {
    /// The files around a network, or around a single file.
    #[must_use]
    pub fn around(path: &Path) -> Self {
        Self { fence: Fence::around(path), known: Mutex::default() }
    }

    /// The path without links, if it may be read.
    fn real(&self, path: &Path) -> Result<PathBuf, Refused> {
        let path = full(path);
        let real = match (path.parent(), path.file_name()) {
            (Some(folder), Some(name)) => self.in_folder(folder, name),
            _ => fs::canonicalize(&path),
        };
        let real = real.map_err(|error| Refused::by_system(&error))?;
        self.fence.admit(&real)?;
        Ok(real)
    }

    fn in_folder(&self, folder: &Path, name: &OsStr) -> io::Result<PathBuf> {
        let known = self.known.lock().unwrap_or_else(PoisonError::into_inner).get(folder).cloned();
        let real = if let Some(real) = known {
            real
        } else {
            let real = fs::canonicalize(folder)?;
            let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
            known.insert(folder.to_path_buf(), real.clone());
            real
        };
        let path = real.join(name);
        if fs::symlink_metadata(&path)?.is_symlink() { fs::canonicalize(&path) } else { Ok(path) }
    }

    fn named(&self, entry: &walkdir::DirEntry) -> Named {
        let (kind, path) = (entry.file_type(), entry.path().to_path_buf());
        let link = entry.path_is_symlink();
        let what = match kind {
            _ if link => self.look(&path).map(|found| (found.what, found.real)),
            kind if kind.is_dir() => Ok((What::Folder, path)),
            kind if kind.is_file() => Ok((What::File, path)),
            _ => Err(Refused::irregular()),
        };
        Named { name: entry.file_name().to_owned(), link, what }
    }
}

impl Store for Folder {
    fn look(&self, path: &Path) -> Result<Found, Refused> {
        let real = self.real(path)?;
        let about = fs::metadata(&real).map_err(|error| Refused::by_system(&error))?;
        let what = match about.file_type() {
            kind if kind.is_dir() => What::Folder,
            kind if kind.is_file() => What::File,
            _ => return Err(Refused::irregular()),
        };
        Ok(Found { what, bytes: about.len(), real })
    }

    fn list(&self, folder: &Path) -> Result<Vec<Named>, Refused> {
        let real = self.real(folder)?;
        let entries = WalkDir::new(&real).min_depth(1).max_depth(1).into_iter();
        let named = |entry: walkdir::Result<walkdir::DirEntry>| match entry {
            Ok(entry) => Ok(self.named(&entry)),
            Err(error) => Err(Refused::by_system(&error.into())),
        };
        let mut list: Vec<Named> = entries.map(named).collect::<Result<_, _>>()?;
        list.sort_unstable_by(|one, other| one.name.cmp(&other.name));
        Ok(list)
    }

    fn open(&self, path: &Path, most: u64) -> Result<Box<dyn Stream>, Refused> {
        Ok(Box::new(open(&self.real(path)?, most)?))
    }
}

/// Opens a regular file of at most `most` bytes; what it is, is asked of the open file.
pub(super) fn open(real: &Path, most: u64) -> Result<Bounded, Refused> {
    let file = without_waiting(real).map_err(|error| Refused::by_system(&error))?;
    let about = file.metadata().map_err(|error| Refused::by_system(&error))?;
    if !about.is_file() {
        return Err(Refused::irregular());
    }
    if about.len() > most { Err(Refused::too_large(most)) } else { Ok(Bounded { file, at: 0, most }) }
}

/// Opening a pipe would wait for its other end, and a link put there meanwhile would be followed.
#[cfg(unix)]
fn without_waiting(path: &Path) -> io::Result<File> {
    use rustix::fs::{Mode, OFlags, open};
    let flags = OFlags::RDONLY | OFlags::NONBLOCK | OFlags::NOFOLLOW | OFlags::CLOEXEC | OFlags::NOCTTY;
    Ok(File::from(open(path, flags, Mode::empty())?))
}

#[cfg(not(unix))]
fn without_waiting(path: &Path) -> io::Result<File> {
    File::open(path)
}

/// A file of which nothing beyond a limit is read, though it grows.
#[derive(Debug)]
pub(super) struct Bounded {
    file: File,
    at: u64,
    most: u64,
}

impl Read for Bounded {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        // One byte more, so that a reader of all of it can tell.
        let left = usize::try_from((self.most + 1).saturating_sub(self.at)).unwrap_or(usize::MAX);
        let most = into.len().min(left);
        let count = self.file.read(&mut into[..most])?;
        self.at += count as u64;
        Ok(count)
    }
}

impl Seek for Bounded {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        self.at = self.file.seek(to)?;
        Ok(self.at)
    }
}
