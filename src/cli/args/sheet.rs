//! `sheet`.

use std::path::PathBuf;

use clap::{Args as Arguments, ValueEnum};

use super::brought::BroughtArgs;
/// Arguments of `sheet`.
#[derive(Debug, Arguments)]
pub struct Sheet {
    /// Hops to print: ids, patterns such as `exchange-*`, `site:ID`, or files; all of them if none is given.
    pub hops: Vec<String>,
    /// Folder of the network.
    #[arg(long, default_value = ".")]
    pub network: PathBuf,
    /// Every line that is computed, instead of the verdict and the main numbers.
    #[arg(long)]
    pub full: bool,
    /// Output format.
    #[arg(long, value_enum, default_value_t = SheetFormat::Table)]
    pub format: SheetFormat,
    /// Add the method and the inputs of every line; in JSON each of them stands once a hop.
    #[arg(long)]
    pub sources: bool,
    /// Write the path profile of the one hop that is named as a drawing (SVG) into this file.
    #[arg(long, value_name = "FILE")]
    pub figure: Option<PathBuf>,
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
}

/// Forms of a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum SheetFormat {
    /// For people.
    Table,
    /// For machines.
    Json,
}
