//! `baseline`.

use std::path::PathBuf;

use clap::{Args as Arguments, Subcommand};

use super::brought::BroughtArgs;
use super::values::day;
use crate::spec::Date;

/// What to do with a baseline.
#[derive(Debug, Subcommand)]
pub enum Baseline {
    /// Make one of all that is open today.
    Create(BaselineArgs),
    /// Take over what got better. What is new or worse is named, and taken in only with `--add`.
    Update(BaselineArgs),
    /// Take out what is no longer found.
    Prune(BaselineArgs),
}

/// Arguments of the `baseline` commands.
#[derive(Debug, Arguments)]
pub struct BaselineArgs {
    /// The file of the baseline.
    pub file: PathBuf,
    /// Files or folders to look at.
    #[arg(default_value = ".")]
    pub paths: Vec<PathBuf>,
    /// Take in what is new or worse too; for `update`.
    #[arg(long)]
    pub add: bool,
    /// The date on which waivers are evaluated, such as 2026-05-18; that of the clock, in UTC, if not given.
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
}
