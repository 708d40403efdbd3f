//! `new`.

use std::path::PathBuf;

use clap::{Args as Arguments, Subcommand};

use super::brought::BroughtArgs;
/// Arguments of `new`.
#[derive(Debug, Arguments)]
#[command(args_conflicts_with_subcommands = true, subcommand_negates_reqs = true)]
pub struct New {
    /// Something else than a network.
    #[command(subcommand)]
    pub what: Option<NewWhat>,
    /// Folder to make; it must be new or empty.
    #[arg(required = true)]
    pub dir: Option<PathBuf>,
}

/// What else can be made.
#[derive(Debug, Subcommand)]
pub enum NewWhat {
    /// Write the form of a record, to fill in what was found at one end on one visit.
    Record(NewRecord),
}

/// Arguments of `new record`.
#[derive(Debug, Arguments)]
pub struct NewRecord {
    /// Which end: `HOP/a` or `HOP/b`.
    #[arg(value_name = "HOP/END")]
    pub end: String,
    /// Folder of the network.
    #[arg(long, default_value = ".")]
    pub network: PathBuf,
    /// Folder to write into; `records` in the folder of the network if not given.
    #[arg(long)]
    pub out: Option<PathBuf>,
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
}
