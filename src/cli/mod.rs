//! The command line: arguments in, exit code out. Each command is a file.
//!
//! stdout carries the product, stderr everything else. Exit codes: 0 clean, 1 findings at the fail level, 2 could not
//! run, 3 nothing found to check.

mod alternatives;
mod args;
mod baseline;
mod check;
mod compare;
mod explain;
mod explain_key;
mod export;
mod fix;
mod gate;
mod import;
#[cfg(feature = "pages")]
mod network_pack;
mod new;
mod new_record;
#[cfg(feature = "pages")]
mod pack;
#[cfg(not(feature = "pages"))]
#[path = "no_press.rs"]
mod pack;
#[cfg(feature = "pages")]
mod pack_site;
mod parts;
mod plan;
#[cfg(feature = "pages")]
mod progress;
mod say;
mod schema;
mod scope;
mod select;
mod sheet;
mod shell;
mod stop;
mod threads;
mod watch;

use std::io::ErrorKind;

use clap::Parser as _;

use crate::text::plain::Form;
use args::{Args, Command};
use stop::present;
pub use stop::{Exit, Stop};

/// Runs the program on the arguments of the process.
#[must_use]
pub fn run() -> Exit {
    let args = match Args::try_parse() {
        Ok(args) => args,
        Err(error) => {
            return misunderstood(&error);
        }
    };
    let done = threads::on_threads(|| match args.command {
        Command::Check(check) if check.watch => watch::run(&check),
        Command::Check(check) => check::run(&check),
        Command::Baseline(baseline) => baseline::run(&baseline),
        Command::Sheet(sheet) => sheet::run(&sheet),
        Command::Alternatives(args) => alternatives::run(&args),
        Command::Plan(plan) => plan::run(&plan),
        Command::Pack(pack) => pack::run(&pack),
        Command::Compare(compare) => compare::run(&compare),
        Command::Import(import) => import::run(&import),
        Command::Export(export) => export::run(&export),
        Command::Parts(args) => parts::run(&args),
        Command::Explain(explain) => explain::run(&explain),
        Command::Schema(schema) => schema::run(&schema),
        Command::New(new) => new::run(&new),
        Command::Completions(completions) => shell::completions(&completions),
        Command::Man(man) => shell::man(&man),
    });
    match done {
        Ok(exit) => exit,
        // A closed pipe is how `| head` says it has enough.
        Err(Stop::Output(error)) if error.kind() == ErrorKind::BrokenPipe => Exit::Piped,
        Err(stop) => {
            say::aside(&stop.to_string());
            Exit::Failed
        }
    }
}

/// Prints the help that was asked for, or what is wrong with the arguments.
fn misunderstood(error: &clap::Error) -> Exit {
    let look = |seen: bool| if seen { Form::Coloured } else { Form::People };
    let (words, form) = (error.render(), look(if error.use_stderr() { say::is_heard() } else { say::is_seen() }));
    let text = if form == Form::Coloured { words.ansi().to_string() } else { words.to_string() };
    if error.use_stderr() {
        say::beside(&text, form);
        return Exit::Failed;
    }
    // If not even this can be printed there is nobody to tell.
    let _ = say::out_as(&text, form);
    Exit::Clean
}
