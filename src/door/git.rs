//! The `git` command, held so that nothing a stranger can commit has a say in what it does.
//!
//! The repository is the one whose `.git` stands at or above the network: it is found here, not by git, since git takes a
//! folder with `HEAD`, `objects` and `refs` for a repository of its own, and those can be committed anywhere. Settings
//! that run something or reach out are overruled, the surroundings cannot lead elsewhere, and answers are bounded in size
//! and time.

use std::io::Read as _;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::mpsc::channel;
use std::time::Duration;

use super::canonical;
use super::fence::repository_of;

/// The longest that one question may take.
pub(super) const LONGEST: Duration = Duration::from_mins(1);
/// The most bytes of one answer; names of revisions are short.
const MOST_BYTES: u64 = 1 << 20;

/// Settings that no repository may make.
const SETTINGS: [&str; 9] = [
    "safe.bareRepository=explicit",
    "core.fsmonitor=false",
    "core.hooksPath=/dev/null",
    "core.attributesFile=/dev/null",
    "core.useReplaceRefs=false",
    "core.pager=cat",
    "protocol.allow=never",
    "credential.helper=",
    "log.showSignature=false",
];

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
    /// The repository belongs to somebody else.
    #[error(
        "the repository {root} belongs to another user, and git does not read it for revision `{revision}`. If you trust it: git config --global --add safe.directory {root}"
    )]
    Owner {
        /// Its folder.
        root: String,
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
    /// git says no, or something of the revision is not to be had.
    #[error("git cannot read revision `{revision}`: {said}")]
    Failed {
        /// What was asked for.
        revision: String,
        /// Why.
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

/// The repository around a network.
#[derive(Debug, Clone)]
pub struct Git {
    root: PathBuf,
    dir: String,
    shallow: bool,
}

impl Git {
    /// The repository around a folder, asked on behalf of a revision.
    ///
    /// # Errors
    /// There is no git, no repository, or one that is not what it seems.
    pub fn around(folder: &Path, revision: &str) -> Result<Self, GitError> {
        let revision = || revision.to_owned();
        let failed = |said: String| GitError::Failed { revision: revision(), said };
        let nowhere = || GitError::NoRepository { folder: folder.display().to_string(), revision: revision() };
        let root = repository_of(folder).or_else(|| repository_of(&canonical(folder))).ok_or_else(nowhere)?;
        let root = canonical(&root);
        let mut command = hardened(&root);
        // git finds the `.git` here by itself, and checks whose it is, and looks nowhere else.
        command.env("GIT_CEILING_DIRECTORIES", root.parent().unwrap_or(&root));
        command.args(["rev-parse", "--absolute-git-dir", "--show-toplevel", "--is-shallow-repository"]);
        command.args(["--git-path", "objects/info/alternates"]);
        let said = match answer(command, &revision())? {
            Ok(said) => said,
            Err(said) if said.contains("dubious ownership") => {
                return Err(GitError::Owner { root: root.display().to_string(), revision: revision() });
            }
            Err(said) if said.contains("not a git repository") => return Err(nowhere()),
            Err(said) => return Err(failed(said)),
        };
        let mut lines = said.lines();
        let (Some(dir), Some(top), Some(shallow), Some(borrowed)) =
            (lines.next(), lines.next(), lines.next(), lines.next())
        else {
            return Err(failed("it does not say where its repository is".into()));
        };
        if canonical(Path::new(top)) != root {
            return Err(failed(format!("its repository does not belong to {}", root.display())));
        }
        if root.join(borrowed).exists() {
            return Err(failed(
                "its repository borrows objects from another one: run `git repack -a -d` and remove `objects/info/alternates`".into(),
            ));
        }
        Ok(Self { dir: dir.to_owned(), shallow: shallow == "true", root })
    }

    /// The folder that holds its files.
    pub(super) fn root(&self) -> &Path {
        &self.root
    }

    fn command(&self, args: &[&str]) -> Command {
        let mut command = hardened(&self.root);
        command.arg("--git-dir").arg(&self.dir).args(args);
        command
    }

    /// A git that answers questions one at a time.
    pub(super) fn talk(&self, args: &[&str]) -> std::io::Result<Child> {
        self.command(args).stdin(Stdio::piped()).stderr(Stdio::null()).spawn()
    }

    /// Whether more than so many bytes of an object are really there. It is inflated piece by piece, and no further.
    pub(super) fn hands_out(&self, object: &str, kind: &str, more_than: u64) -> bool {
        let mut command = self.command(&["-c", "core.bigFileThreshold=64k", "cat-file", kind, object]);
        let Ok(mut child) = command.stderr(Stdio::null()).spawn() else { return false };
        let output = child.stdout.take().map(|output| output.take(more_than + 1));
        let count = output.map(|mut output| std::io::copy(&mut output, &mut std::io::sink()));
        end(&mut child);
        matches!(count, Some(Ok(count)) if count > more_than)
    }

    fn ask(&self, revision: &str, args: &[&str]) -> Result<Result<String, String>, GitError> {
        answer(self.command(args), revision)
    }

    /// Whether a name is a revision.
    #[must_use]
    pub fn is_revision(&self, name: &str) -> bool {
        matches!(self.peeled(name, "commit"), Ok(Ok(_)))
    }

    fn peeled(&self, revision: &str, to: &str) -> Result<Result<String, String>, GitError> {
        let wanted = format!("{revision}^{{{to}}}");
        self.ask(revision, &["rev-parse", "--verify", "--quiet", "--end-of-options", &wanted])
    }

    /// The full name of the commit a revision stands for.
    pub(super) fn commit(&self, revision: &str) -> Result<String, GitError> {
        let missing = || GitError::NoRevision { revision: revision.to_owned(), shallow: self.shallow };
        self.peeled(revision, "commit")?.map_err(|_| missing())
    }

    /// The name of the tree of a commit.
    pub(super) fn tree(&self, revision: &str) -> Result<String, GitError> {
        let commit = self.commit(revision)?;
        let failed = |_| GitError::Failed { revision: revision.to_owned(), said: "its tree is not here".into() };
        self.peeled(&commit, "tree")?.map_err(failed)
    }

    /// The commit where a revision and HEAD part: what a branch was started from.
    ///
    /// # Errors
    /// No such revision, or no common ancestor in this clone.
    pub fn merge_base(&self, revision: &str) -> Result<String, GitError> {
        let (name, head) = (self.commit(revision)?, self.commit("HEAD")?);
        match self.ask(revision, &["merge-base", &name, &head])? {
            Ok(base) => Ok(base.lines().next().unwrap_or_default().to_owned()),
            Err(_) => Err(GitError::NoBase { revision: revision.to_owned(), shallow: self.shallow }),
        }
    }
}

/// The commit that a folder stands at, and whether nothing in it differs; none where git does not say.
#[must_use]
pub fn revision_of(folder: &Path) -> Option<(String, bool)> {
    let git = Git::around(folder, "HEAD").ok()?;
    let commit = git.commit("HEAD").ok()?;
    let whole = canonical(folder);
    let below = whole.strip_prefix(&git.root).ok()?.to_str().filter(|below| !below.is_empty()).unwrap_or(".");
    let args = ["status", "--porcelain", "--ignore-submodules=all", "--untracked-files=normal", "--", below];
    let said = git.ask("HEAD", &args).ok()?.ok()?;
    Some((commit, said.is_empty()))
}

/// A git in a folder that changes nothing, asks nobody, runs nothing and reaches nowhere.
fn hardened(folder: &Path) -> Command {
    let mut command = Command::new("git");
    // Where the surroundings of a hook or a script would lead it; who runs us may well set its settings.
    let led = std::env::vars_os().map(|(name, _)| name).filter(|name| {
        let name = name.as_encoded_bytes();
        name.starts_with(b"GIT_") && !name.starts_with(b"GIT_CONFIG")
    });
    led.for_each(|name| {
        command.env_remove(name);
    });
    for (name, value) in [
        ("GIT_OPTIONAL_LOCKS", "0"),
        ("GIT_TERMINAL_PROMPT", "0"),
        ("GIT_NO_LAZY_FETCH", "1"),
        ("GIT_NO_REPLACE_OBJECTS", "1"),
        ("GIT_ALLOW_PROTOCOL", "none"),
        ("GIT_GRAFT_FILE", "/dev/null"),
        ("GIT_ATTR_NOSYSTEM", "1"),
        ("LC_ALL", "C"),
    ] {
        command.env(name, value);
    }
    command.arg("-C").arg(folder).arg("--no-pager").arg("--literal-pathspecs");
    for setting in SETTINGS {
        command.args(["-c", setting]);
    }
    command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped());
    command
}

/// What a command answers, or what it says against it, within bounds.
fn answer(mut command: Command, revision: &str) -> Result<Result<String, String>, GitError> {
    let failed = |said: &str| GitError::Failed { revision: revision.to_owned(), said: said.to_owned() };
    let mut child = command.spawn().map_err(|_| GitError::NoGit(revision.to_owned()))?;
    let (send, received) = channel();
    for (number, pipe) in [
        child.stdout.take().map(|pipe| Box::new(pipe) as Box<dyn std::io::Read + Send>),
        child.stderr.take().map(|pipe| Box::new(pipe) as Box<dyn std::io::Read + Send>),
    ]
    .into_iter()
    .enumerate()
    {
        let send = send.clone();
        let read = move || {
            let mut bytes = Vec::new();
            let done = pipe.map(|pipe| pipe.take(MOST_BYTES).read_to_end(&mut bytes));
            let _ = send.send((number, done.is_some_and(|done| done.is_ok()), bytes));
        };
        std::thread::Builder::new().spawn(read).map_err(|_| failed("no thread to read its answer"))?;
    }
    let mut texts = [const { String::new() }; 2];
    for _ in 0..2 {
        let Ok((number, true, bytes)) = received.recv_timeout(LONGEST) else {
            end(&mut child);
            return Err(failed("it does not answer"));
        };
        String::from_utf8_lossy(&bytes).trim_end_matches(['\n', '\r']).clone_into(&mut texts[number]);
    }
    let [said, complaint] = texts;
    let sound = child.wait().is_ok_and(|status| status.success());
    Ok(if sound { Ok(said) } else { Err(complaint) })
}

/// Ends a git that was started here.
pub(super) fn end(child: &mut Child) {
    let _ = child.kill();
    let _ = child.wait();
}
