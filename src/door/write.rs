//! Writing a file whole or not at all.
//!
//! A file is written beside its place under a name nobody can guess and then moved there, so that a reader never sees half
//! of it. What is no regular file, a pipe, a device, is written into and stays what it is. No link in a checkout leads a
//! written file out of it.

use std::collections::BTreeSet;
use std::fs;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use tempfile::{Builder, NamedTempFile};

use super::fence::{Fence, repository_of};
use super::path::full;

/// What a file is called until it is whole: this, the number of the process, something nobody can guess, and `.part`.
const PREFIX: &str = ".hopwright-";
const SUFFIX: &str = ".part";

/// Writes a file that was named. Makes missing folders.
///
/// # Errors
/// A link would lead it out of the repository it is named in, or whatever the system says; the old file, if any, is then
/// as it was.
pub fn write_whole(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let whole = full(path);
    if let Some(mut standing) = standing(&whole) {
        return standing.write_all(bytes).and_then(|()| standing.flush());
    }
    let (Some(folder), Some(name)) = (whole.parent(), whole.file_name()) else {
        return Err(io::Error::new(io::ErrorKind::InvalidInput, "it names no file"));
    };
    // The part that is there already decides: what is missing will be made as plain folders.
    let there = folder.ancestors().find(|folder| fs::symlink_metadata(folder).is_ok()).unwrap_or(folder);
    stays_inside(folder, there)?;
    fs::create_dir_all(folder)?;
    let folder = fs::canonicalize(folder)?;
    let target = folder.join(name);
    match fs::metadata(&target) {
        Ok(about) if about.is_dir() => Err(io::Error::new(io::ErrorKind::IsADirectory, "it is a folder")),
        Ok(about) if !about.is_file() => {
            stays_inside(&folder, &target)?;
            fs::OpenOptions::new().write(true).open(&target)?.write_all(bytes)
        }
        _ => replaced(&folder, &target, bytes),
    }
}

/// Writes a fixed file of a network where its links lead, with the rights it has, if it still has the text it had.
///
/// # Errors
/// It lies outside of its repository or network, has changed meanwhile, may not be written, or whatever the system says.
pub fn mend(root: &Path, path: &Path, before: &str, after: &str) -> io::Result<()> {
    let (part, target) = mending(root, path, before, after)?;
    part.persist(target).map(drop).map_err(|error| error.error)
}

/// A fixed file ready to be put in its place.
fn mending(root: &Path, path: &Path, before: &str, after: &str) -> io::Result<(NamedTempFile, PathBuf)> {
    let real = fs::canonicalize(full(path))?;
    Fence::around(root).admit(&real).map_err(|refused| io::Error::other(refused.detail))?;
    let rights = fs::metadata(&real)?.permissions();
    let now =
        super::folder::open(&real, before.len() as u64).and_then(|file| super::read_all(file, before.len() as u64));
    if now.ok().as_deref() != Some(before.as_bytes()) {
        return Err(io::Error::other("it has changed since it was read; run again"));
    }
    if rights.readonly() {
        return Err(io::Error::from(io::ErrorKind::PermissionDenied));
    }
    let folder = real.parent().unwrap_or(&real).to_path_buf();
    Ok((filled(&folder, after.as_bytes(), Some(rights))?, real))
}

/// A file of a network that is written together with others.
#[derive(Debug, Clone)]
pub enum Change {
    /// A file that is not there yet.
    New {
        /// Where.
        path: PathBuf,
        /// What it holds.
        text: String,
    },
    /// A file that is there, with another text.
    Mended {
        /// Where.
        path: PathBuf,
        /// What it held when it was read.
        before: String,
        /// What it is to hold.
        after: String,
    },
}

impl Change {
    /// Where.
    #[must_use]
    pub fn path(&self) -> &Path {
        match self {
            Self::New { path, .. } | Self::Mended { path, .. } => path,
        }
    }
}

/// Writes files of a network, all of them or none: each is written beside its place first, and only when all of them are
/// are they moved there. A new file takes the place of nothing. If one cannot be moved, those that were are taken back.
///
/// # Errors
/// The path of the one that could not be written, and why.
pub fn together(root: &Path, changes: &[Change]) -> Result<(), (PathBuf, io::Error)> {
    let (mut made, mut parts) = (Vec::new(), Vec::new());
    let mut done = 0;
    let written = changes.iter().try_for_each(|change| {
        let failed = |error| (change.path().to_path_buf(), error);
        parts.push(staged(root, change, &mut made).map_err(failed)?);
        Ok(())
    });
    let written = written.and_then(|()| {
        for (change, (part, target)) in changes.iter().zip(std::mem::take(&mut parts)) {
            let placed = match change {
                Change::New { .. } => part.persist_noclobber(target),
                Change::Mended { .. } => part.persist(target),
            };
            placed.map_err(|error| (change.path().to_path_buf(), error.error))?;
            done += 1;
        }
        Ok(())
    });
    if written.is_err() {
        for change in &changes[..done] {
            // What cannot be taken back cannot be told better than by the error that is told.
            let _ = match change {
                Change::New { path, .. } => fs::remove_file(full(path)),
                Change::Mended { path, before, after } => mend(root, path, after, before),
            };
        }
        drop(parts);
        made.iter().rev().for_each(|folder| drop(fs::remove_dir(folder)));
    }
    written
}

/// A file written beside its place, and that place. Folders that had to be made are added to `made`.
fn staged(root: &Path, change: &Change, made: &mut Vec<PathBuf>) -> io::Result<(NamedTempFile, PathBuf)> {
    let (path, text) = match change {
        Change::New { path, text } => (path, text),
        Change::Mended { path, before, after } => return mending(root, path, before, after),
    };
    let whole = full(path);
    let (Some(folder), Some(name)) = (whole.parent(), whole.file_name()) else {
        return Err(io::Error::new(io::ErrorKind::InvalidInput, "it names no file"));
    };
    if fs::symlink_metadata(&whole).is_ok() {
        return Err(io::Error::new(io::ErrorKind::AlreadyExists, "it is there already"));
    }
    let there = folder.ancestors().find(|folder| fs::symlink_metadata(folder).is_ok()).unwrap_or(folder);
    Fence::around(root).admit(&fs::canonicalize(there)?).map_err(|refused| io::Error::other(refused.detail))?;
    let missing: Vec<PathBuf> =
        folder.ancestors().take_while(|folder| *folder != there).map(Path::to_path_buf).collect();
    for folder in missing.into_iter().rev() {
        fs::create_dir(&folder)?;
        made.push(folder);
    }
    let folder = fs::canonicalize(folder)?;
    Ok((filled(&folder, text.as_bytes(), None)?, folder.join(name)))
}

/// What is open already and has a name of its own.
fn standing(path: &Path) -> Option<Box<dyn io::Write>> {
    match path.to_str()? {
        "/dev/stdout" | "/dev/fd/1" | "/proc/self/fd/1" => Some(Box::new(io::stdout())),
        "/dev/stderr" | "/dev/fd/2" | "/proc/self/fd/2" => Some(Box::new(io::stderr())),
        _ => None,
    }
}

/// What is there under a name in a checkout, or below where one stands, does not lead out of it.
fn stays_inside(folder: &Path, there: &Path) -> io::Result<()> {
    let here = || std::env::current_dir().ok().filter(|here| folder.starts_with(here));
    let Some(bounds) = repository_of(folder).or_else(here) else { return Ok(()) };
    let (real, bounds) = (fs::canonicalize(there)?, fs::canonicalize(bounds)?);
    if real.starts_with(&bounds) {
        return Ok(());
    }
    let detail = format!("a link leads out of {}; name what it leads to if that is meant", bounds.display());
    Err(io::Error::other(detail))
}

/// Puts a new file in the place of whatever has the name; a link is replaced, not followed.
fn replaced(folder: &Path, target: &Path, bytes: &[u8]) -> io::Result<()> {
    filled(folder, bytes, None)?.persist(target).map(drop).map_err(|error| error.error)
}

/// A file under a name nobody can guess, whole.
fn filled(folder: &Path, bytes: &[u8], rights: Option<fs::Permissions>) -> io::Result<NamedTempFile> {
    clear(folder);
    let mut part = part_in(folder)?;
    part.write_all(bytes)?;
    if let Some(rights) = rights {
        part.as_file().set_permissions(rights)?;
    }
    part.as_file().sync_all()?;
    Ok(part)
}

fn part_in(folder: &Path) -> io::Result<NamedTempFile> {
    let prefix = format!("{PREFIX}{}-", std::process::id());
    let mut builder = Builder::new();
    builder.prefix(&prefix).suffix(SUFFIX).rand_bytes(12);
    // As any file somebody makes: what the mask of the process leaves.
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        builder.permissions(fs::Permissions::from_mode(0o666));
    }
    builder.tempfile_in(folder)
}

/// Takes away what runs that were killed have left in a folder; each folder is looked at once in a run.
fn clear(folder: &Path) {
    static SEEN: Mutex<BTreeSet<PathBuf>> = Mutex::new(BTreeSet::new());
    if !SEEN.lock().unwrap_or_else(PoisonError::into_inner).insert(folder.to_path_buf()) {
        return;
    }
    let Ok(entries) = fs::read_dir(folder) else { return };
    for entry in entries.flatten() {
        let name = entry.file_name();
        let process = name.to_str().and_then(|name| name.strip_prefix(PREFIX)?.strip_suffix(SUFFIX)?.split('-').next());
        let Some(process) = process.and_then(|process| process.parse::<u32>().ok()) else { continue };
        if entry.file_type().is_ok_and(|kind| kind.is_file()) && is_over(process, &entry) {
            // Not ours to report: the file that was asked for is written all the same.
            let _ = fs::remove_file(entry.path());
        }
    }
}

/// Whether the process that wrote a part is gone: where the system lists processes by that list, else by the hour.
fn is_over(process: u32, entry: &fs::DirEntry) -> bool {
    if Path::new("/proc/self").exists() {
        return !Path::new("/proc").join(process.to_string()).exists();
    }
    let age = entry.metadata().and_then(|about| about.modified()).ok().and_then(|at| at.elapsed().ok());
    age.is_some_and(|age| age.as_secs() > 3600)
}
