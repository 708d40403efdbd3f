//! `plan`.

use std::path::PathBuf;

use clap::{Args as Arguments, ValueEnum};

use super::brought::BroughtArgs;

/// Arguments of `plan`.
#[derive(Debug, Arguments)]
pub struct Plan {
    /// Hops to look for better settings for, by id; all that have no licence or registration of their own if none is given.
    #[arg(requires = "assign", value_name = "HOP")]
    pub hops: Vec<String>,
    /// Propose channel, polarisation and half of the hops, as a patch.
    #[arg(long, conflicts_with_all = ["format", "figure"])]
    pub assign: bool,
    /// Folder of the network.
    #[arg(long, default_value = ".")]
    pub network: PathBuf,
    /// Output format.
    #[arg(long, value_enum, default_value_t = PlanFormat::Table)]
    pub format: PlanFormat,
    /// Write the plan as a drawing (SVG) into this file.
    #[arg(long, value_name = "FILE")]
    pub figure: Option<PathBuf>,
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
}

/// Forms of a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum PlanFormat {
    /// For people.
    Table,
    /// For machines.
    Json,
}
