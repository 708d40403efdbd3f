//! How a command ends, what stops it, and what every command asks of its paths.

/// How a run ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exit {
    /// Nothing at or above the fail level.
    Clean,
    /// Findings at or above it.
    Findings,
    /// It could not be run.
    Failed,
    /// There was nothing to check.
    Nothing,
    /// Whoever read the output had enough of it: as a shell says of a program that SIGPIPE ends.
    Piped,
}

impl From<Exit> for std::process::ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(match exit {
            Exit::Clean => 0,
            Exit::Findings => 1,
            Exit::Failed => 2,
            Exit::Nothing => 3,
            Exit::Piped => 141,
        })
    }
}

/// What stops a command.
#[derive(Debug, thiserror::Error)]
pub enum Stop {
    /// Nobody reads our output any more, or it cannot be written.
    #[error("cannot write the output: {0}")]
    Output(std::io::Error),
    /// A file cannot be written.
    #[error("cannot write {path}: {error}")]
    Write {
        /// Where.
        path: String,
        /// Why.
        error: std::io::Error,
    },
    /// Pages cannot be set.
    #[cfg(feature = "pages")]
    #[error(transparent)]
    Pack(#[from] crate::pack::PackError),
    /// A revision cannot be read.
    #[error(transparent)]
    Git(#[from] crate::door::GitError),
    /// Something named on the command line is not there, or is where it should not be.
    #[error("{0}")]
    Unknown(String),
}

/// A path named on the command line must be there: a slip in it is no finding about a network.
pub(super) fn present(path: &std::path::Path) -> Result<(), Stop> {
    let missing = || Stop::Unknown(format!("{}: there is no such file or folder", path.display()));
    if crate::door::exists(path) { Ok(()) } else { Err(missing()) }
}
