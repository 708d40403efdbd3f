//! The arguments, as typed: a file a command.

mod alternatives;
mod baseline;
mod brought;
mod check;
mod compare;
mod export;
mod form;
mod import;
mod look;
mod new;
mod pack;
mod parts;
mod plan;
mod sheet;
mod values;

use std::path::PathBuf;

use clap::{Args as Arguments, Parser, Subcommand};

pub use alternatives::{Alternatives, AlternativesFormat};
pub use baseline::{Baseline, BaselineArgs};
pub use brought::BroughtArgs;
pub use check::Check;
pub use compare::{Compare, CompareFormat, CompareGate, CompareOutput};
pub use export::{Export, ExportWhat};
pub use form::Format;
pub use import::{Import, ImportArgs};
pub use look::{LookArgs, When};
pub use new::{New, NewRecord, NewWhat};
pub use pack::Pack;
#[cfg(feature = "pages")]
pub use pack::{NetworkPackArgs, PackArgs};
pub use parts::PartsArgs;
pub use plan::{Plan, PlanFormat};
pub use sheet::{Sheet, SheetFormat};

/// Checks point-to-point radio hops written as YAML, computes their numbers, and prints packs for the people who build them.
#[derive(Debug, Parser)]
#[command(version, max_term_width = 100)]
pub struct Args {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Judge hops and say what is wrong, where, and what would fix it.
    Check(Check),
    /// Record what is wrong today, so that only what is new or worse fails.
    #[command(subcommand)]
    Baseline(Baseline),
    /// Print the computed numbers of hops.
    Sheet(Sheet),
    /// Look for changes that make a failing hop pass, each tried against every rule.
    Alternatives(Alternatives),
    /// Print the frequency plan of a network, or propose a better one.
    Plan(Plan),
    /// Print packs as PDF: for the desk, or for the crew at one end.
    #[command(subcommand)]
    Pack(Pack),
    /// Say what changed in the numbers between two folders or revisions, and why.
    Compare(Compare),
    /// Take over sites and hops from tables and waypoints: says what would change, and writes it with `--write`.
    #[command(subcommand)]
    Import(Import),
    /// Write sites, hops and what is computed of them in open formats.
    Export(Export),
    /// List the standard parts that references may name as `std:…`, or print one in full.
    Parts(PartsArgs),
    /// Print the manual of a rule or what a key means, or list all rules.
    Explain(Explain),
    /// Write the JSON Schema of every kind of document, or say which copies of them are stale.
    Schema(Schema),
    /// Make a small network to start from, or the form of a record.
    New(New),
    /// Print the completions of a shell, to be put where it looks for them.
    Completions(Completions),
    /// Print the manual page, or write that of every command into a folder.
    Man(Man),
}

/// Arguments of `completions`.
#[derive(Debug, Arguments)]
pub struct Completions {
    /// The shell.
    #[arg(value_enum)]
    pub shell: clap_complete::Shell,
}

/// Arguments of `man`.
#[derive(Debug, Arguments)]
pub struct Man {
    /// Folder to write a page for each command into.
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
}

/// Arguments of `explain`.
#[derive(Debug, Arguments)]
pub struct Explain {
    /// Name of a rule as `check` prints it, a family of rules, or a key after its kind: `cable.outside_diameter`.
    pub rule: Option<String>,
}

/// Arguments of `schema`.
#[derive(Debug, Arguments)]
pub struct Schema {
    /// Folder to write into.
    #[arg(long, default_value = "schema")]
    pub out: PathBuf,
    /// Write nothing: name the schemas of a folder that are not those of this program, and end with 1 if there are any.
    #[arg(long, value_name = "DIR", num_args = 0..=1, default_missing_value = "schema", conflicts_with = "out")]
    pub check: Option<PathBuf>,
}
