//! A network as it was in a revision: its files read out of git's store, with no checkout touched.
//!
//! The `git` command does the reading. It runs in the folder of the network; what comes back are texts under the paths
//! the files have, or would have, in that folder.

use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::path::{Component, Path, PathBuf};
use std::process::{Command, Stdio};

use crate::network::Text;
use crate::source::{FileFault, FileFaultKind, MAX_BYTES, decode, is_wanted};

/// Why a revision cannot be read.
#[derive(Debug, thiserror::Error)]
pub enum GitError {
    /// There is no `git`.
    #[error("reading revision `{0}` takes the `git` command, and it is not there: install it, or compare two folders")]
    NoGit(String),
    /// The folder is in no repository.
    #[error(
        "{folder} is in no git repository, so there is no revision `{revision}`: name two folders, or stand in a clone"
    )]
    NoRepository {
        /// The folder.
        folder: String,
        /// What was asked for.
        revision: String,
    },
    /// No such revision.
    #[error("there is no revision `{revision}` here{}", hint(*shallow, "fetch it"))]
    NoRevision {
        /// What was asked for.
        revision: String,
        /// Whether the clone holds a part of the history only.
        shallow: bool,
    },
    /// Two revisions without a common ancestor.
    #[error("`{revision}` and HEAD have no common ancestor here{}", hint(*shallow, "compare with `{revision}` itself, as `compare REV`"))]
    NoBase {
        /// What was asked for.
        revision: String,
        /// Whether the clone holds a part of the history only.
        shallow: bool,
    },
    /// git says no.
    #[error("git cannot read revision `{revision}`: {said}")]
    Failed {
        /// What was asked for.
        revision: String,
        /// What git said.
        said: String,
    },
}

fn hint(shallow: bool, otherwise: &str) -> String {
    if shallow {
        ": this clone is shallow, run `git fetch --unshallow` first (in CI, check out with the full history)".into()
    } else {
        format!(": {otherwise}")
    }
}

/// A git command in a folder that changes nothing and asks nobody.
fn git(folder: &Path, args: &[&str]) -> Command {
    let mut command = Command::new("git");
    command.arg("-C").arg(folder).args(args).stdin(Stdio::null());
    command.env("GIT_OPTIONAL_LOCKS", "0").env("GIT_TERMINAL_PROMPT", "0").env("LC_ALL", "C");
    command
}

/// The output of a git command, or what it said against it.
fn ask(folder: &Path, revision: &str, args: &[&str]) -> Result<Result<String, String>, GitError> {
    let output = git(folder, args).output().map_err(|_| GitError::NoGit(revision.to_owned()))?;
    let said = |bytes: &[u8]| String::from_utf8_lossy(bytes).trim_end_matches(['\n', '\r']).to_owned();
    Ok(if output.status.success() { Ok(said(&output.stdout)) } else { Err(said(&output.stderr)) })
}

/// Whether a name is a revision of the repository around a folder. Without git, or outside a repository, it is none.
#[must_use]
pub fn is_revision(folder: &Path, name: &str) -> bool {
    matches!(commit(folder, name), Ok(Ok(_)))
}

fn commit(folder: &Path, revision: &str) -> Result<Result<String, String>, GitError> {
    let wanted = format!("{revision}^{{commit}}");
    ask(folder, revision, &["rev-parse", "--verify", "--quiet", "--end-of-options", &wanted])
}

fn is_shallow(folder: &Path, revision: &str) -> Result<bool, GitError> {
    Ok(ask(folder, revision, &["rev-parse", "--is-shallow-repository"])?.is_ok_and(|said| said == "true"))
}

/// The full name of a commit; errors say what to do.
fn resolved(folder: &Path, revision: &str) -> Result<String, GitError> {
    if let Err(said) = ask(folder, revision, &["rev-parse", "--show-toplevel"])? {
        return Err(if said.contains("not a git repository") {
            GitError::NoRepository { folder: folder.display().to_string(), revision: revision.to_owned() }
        } else {
            GitError::Failed { revision: revision.to_owned(), said }
        });
    }
    match commit(folder, revision)? {
        Ok(name) => Ok(name),
        Err(_) => Err(GitError::NoRevision { revision: revision.to_owned(), shallow: is_shallow(folder, revision)? }),
    }
}

/// The commit where a revision and HEAD part: what a branch was started from.
///
/// # Errors
/// No git, no repository, no such revision, or no common ancestor in this clone.
pub fn merge_base(folder: &Path, revision: &str) -> Result<String, GitError> {
    let name = resolved(folder, revision)?;
    let head = resolved(folder, "HEAD")?;
    match ask(folder, revision, &["merge-base", &name, &head])? {
        Ok(base) => Ok(base.lines().next().unwrap_or_default().to_owned()),
        Err(_) => Err(GitError::NoBase { revision: revision.to_owned(), shallow: is_shallow(folder, revision)? }),
    }
}

/// A file of a revision.
struct Entry {
    link: bool,
    object: String,
    size: u64,
    path: PathBuf,
}

/// The specification files below a folder as they are in a revision.
///
/// # Errors
/// No git, no repository, no such revision, or an object that is not in this clone.
pub fn texts_at(folder: &Path, revision: &str) -> Result<Vec<Text>, GitError> {
    let name = resolved(folder, revision)?;
    let listed = ask(folder, revision, &["ls-tree", "-r", "-l", "-z", &name])?;
    let failed = |said: String| GitError::Failed { revision: revision.to_owned(), said };
    let listed = listed.map_err(failed)?;
    let entries: Vec<Entry> = listed.split('\0').filter_map(entry).collect();
    let mut store = Store::open(folder).map_err(|_| GitError::NoGit(revision.to_owned()))?;
    let mut texts = Vec::new();
    for entry in entries.iter().filter(|entry| is_wanted(&entry.path)) {
        let path = folder.join(&entry.path);
        let text = store.text(entry, &entries, &path).map_err(|error| failed(error.to_string()))?;
        texts.push((path, text));
    }
    texts.sort_by(|(one, _), (other, _)| one.cmp(other));
    Ok(texts)
}

/// `100644 blob <object> <size>\t<path>`; nothing for what is no file.
fn entry(line: &str) -> Option<Entry> {
    let (about, path) = line.split_once('\t')?;
    let mut words = about.split_whitespace();
    let (mode, kind, object, size) = (words.next()?, words.next()?, words.next()?, words.next()?);
    (kind == "blob").then(|| Entry {
        link: mode == "120000",
        object: object.to_owned(),
        size: size.parse().unwrap_or(u64::MAX),
        path: path.into(),
    })
}

/// One git that hands out objects.
struct Store {
    git: std::process::Child,
}

/// How often a link may lead to a link.
const MOST_LINKS: usize = 8;

impl Store {
    fn open(folder: &Path) -> std::io::Result<Self> {
        let mut command = git(folder, &["cat-file", "--batch"]);
        let git = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::null()).spawn()?;
        Ok(Self { git })
    }

    /// The text of a file, links followed as far as they stay among the files of the revision.
    fn text(&mut self, entry: &Entry, all: &[Entry], shown: &Path) -> std::io::Result<Result<String, FileFault>> {
        let mut entry = entry;
        for _ in 0..MOST_LINKS {
            if entry.size > MAX_BYTES {
                return Ok(Err(FileFault::too_large(shown)));
            }
            let bytes = self.read(&entry.object)?;
            if !entry.link {
                return Ok(decode(shown, bytes).map(|text| text.text));
            }
            let target = String::from_utf8_lossy(&bytes).into_owned();
            let to = entry.path.parent().map(|parent| plain(&parent.join(&target)));
            match all.iter().find(|other| to.as_ref() == Some(&other.path)) {
                Some(next) => entry = next,
                None => break,
            }
        }
        let detail = "the link leads to no file of this folder in the revision";
        Ok(Err(FileFault::new(shown, FileFaultKind::Unreadable, detail)))
    }

    fn read(&mut self, object: &str) -> std::io::Result<Vec<u8>> {
        let gone = || std::io::Error::other("git stopped answering");
        let (input, output) = (self.git.stdin.as_mut().ok_or_else(gone)?, self.git.stdout.as_mut().ok_or_else(gone)?);
        writeln!(input, "{object}")?;
        input.flush()?;
        // git answers one question at a time and sends nothing beyond the answer, so no byte is lost in this buffer.
        let mut answer = BufReader::new(output);
        let mut header = String::new();
        answer.read_line(&mut header)?;
        let size = header.trim_end().rsplit(' ').next().and_then(|size| size.parse::<usize>().ok());
        let size = size.ok_or_else(|| std::io::Error::other(format!("object {}", header.trim_end())))?;
        let mut bytes = vec![0; size + 1];
        answer.read_exact(&mut bytes)?;
        bytes.pop();
        Ok(bytes)
    }
}

impl Drop for Store {
    fn drop(&mut self) {
        // Without questions it ends; nobody waits for what it says.
        drop(self.git.stdin.take());
        let _ = self.git.wait();
    }
}

/// A path without `.` and `..`.
fn plain(path: &Path) -> PathBuf {
    path.components().fold(PathBuf::new(), |mut plain, part| {
        match part {
            Component::ParentDir => {
                plain.pop();
            }
            Component::CurDir => {}
            part => plain.push(part),
        }
        plain
    })
}
