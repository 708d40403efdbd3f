//! The command line: arguments in, exit code out. Each command is a file.
//!
//! stdout carries the product, stderr everything else. Exit codes: 0 clean, 1 findings at the fail level, 2 could not
//! run, 3 nothing found to check.

mod args;
mod baseline;
mod check;
mod compare;
mod explain;
mod fix;
mod new;
mod new_record;
mod pack;
mod progress;
mod schema;
mod sheet;

use std::io::Write as _;

use clap::Parser as _;

use args::{Args, Command};

use crate::network::{Brought, Scope};

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
}

impl From<Exit> for std::process::ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(match exit {
            Exit::Clean => 0,
            Exit::Findings => 1,
            Exit::Failed => 2,
            Exit::Nothing => 3,
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
    #[error(transparent)]
    Pack(#[from] crate::pack::PackError),
    /// A revision cannot be read.
    #[error(transparent)]
    Git(#[from] crate::door::GitError),
    /// Something named on the command line is not there, or is where it should not be.
    #[error("{0}")]
    Unknown(String),
}

/// Runs the program on the arguments of the process.
#[must_use]
pub fn run() -> Exit {
    let args = match Args::try_parse() {
        Ok(args) => args,
        Err(error) => {
            let failed = error.use_stderr();
            // If not even this can be printed there is nobody to tell.
            let _ = error.print();
            return if failed { Exit::Failed } else { Exit::Clean };
        }
    };
    let done = match args.command {
        Command::Check(check) => check::run(&check),
        Command::Baseline(baseline) => baseline::run(&baseline),
        Command::Sheet(sheet) => sheet::run(&sheet),
        Command::Pack(pack) => pack::run(&pack),
        Command::Compare(compare) => compare::run(&compare),
        Command::Explain(explain) => explain::run(&explain),
        Command::Schema(schema) => schema::run(&schema),
        Command::New(new) => new::run(&new),
    };
    match done {
        Ok(exit) => exit,
        // A closed pipe is how `| head` says it has enough.
        Err(Stop::Output(error)) if error.kind() == std::io::ErrorKind::BrokenPipe => Exit::Failed,
        Err(stop) => {
            eprintln!("hopwright: {stop}");
            Exit::Failed
        }
    }
}

/// The scope of paths, with the data that lies outside.
fn scope(paths: &[std::path::PathBuf], brought: &args::BroughtArgs) -> Scope {
    Scope::of(paths).with_brought(self::brought(brought))
}

fn brought(args: &args::BroughtArgs) -> Brought {
    Brought { terrain: args.terrain.clone(), rain_map: args.rain_map.clone() }
}

/// A path named on the command line must be there: a slip in it is no finding about a network.
fn present(path: &std::path::Path) -> Result<(), Stop> {
    let missing = || Stop::Unknown(format!("{}: there is no such file or folder", path.display()));
    if crate::door::exists(path) { Ok(()) } else { Err(missing()) }
}

fn print(text: &str) -> Result<(), Stop> {
    let mut out = std::io::stdout().lock();
    out.write_all(text.as_bytes()).and_then(|()| out.flush()).map_err(Stop::Output)
}
