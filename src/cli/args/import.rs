//! `import`.

use std::path::PathBuf;

use clap::{Args as Arguments, Subcommand};

use super::values::dialect;
use crate::spec::Dialect;

/// What is imported.
#[derive(Debug, Subcommand)]
pub enum Import {
    /// Sites, from tables (`.csv`, `.tsv`, `.txt`) or from waypoints (`.gpx`, `.kml`).
    Sites(ImportArgs),
    /// Hops, from tables.
    Hops(ImportArgs),
}

/// Arguments of `import`.
#[derive(Debug, Arguments)]
pub struct ImportArgs {
    /// The files.
    #[arg(required = true)]
    pub files: Vec<PathBuf>,
    /// Folder of the network.
    #[arg(long, default_value = ".")]
    pub network: PathBuf,
    /// How tables separate cells and write decimals. Without it the header shows what separates cells, and decimals are taken
    /// only where commas do, which leaves the point.
    #[arg(long, value_parser = dialect())]
    pub dialect: Option<Dialect>,
    /// A column of the table to pass over, as its header has it; may be given several times.
    #[arg(long, value_name = "COLUMN")]
    pub ignore: Vec<String>,
    /// Write what the plan says. Without it nothing is written.
    #[arg(long)]
    pub write: bool,
}
