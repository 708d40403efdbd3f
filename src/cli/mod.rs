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
mod stop;

use clap::Parser as _;

use args::{Args, Command};
pub use stop::{Exit, Stop};
use stop::{present, print};

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
