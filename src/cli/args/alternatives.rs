//! `alternatives`.

use std::path::PathBuf;

use clap::{Args as Arguments, ValueEnum};

use super::brought::BroughtArgs;
use super::check::Level;
use super::values::day;
use crate::spec::Date;

/// Arguments of `alternatives`.
#[derive(Debug, Arguments)]
pub struct Alternatives {
    /// The hop, by its id.
    #[arg(value_name = "HOP")]
    pub hop: String,
    /// Folder of the network.
    #[arg(long, default_value = ".")]
    pub network: PathBuf,
    /// Greatest number of proposals.
    #[arg(long, default_value_t = 3, value_name = "N", value_parser = clap::value_parser!(u8).range(1..=20))]
    pub most: u8,
    /// Greatest number of changes and combinations to try.
    #[arg(long, default_value_t = 1000, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=1_000_000))]
    pub trials: u32,
    /// Least severity that a proposal has to clear.
    #[arg(long, value_enum, default_value_t = Level::Error)]
    pub fail_on: Level,
    /// Write proposal N into the hop's file; comments and everything else in it stay as they are.
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u8).range(1..))]
    pub write: Option<u8>,
    /// Output format.
    #[arg(long, value_enum, default_value_t = AlternativesFormat::Text)]
    pub format: AlternativesFormat,
    /// The date on which waivers are evaluated, such as 2026-05-18; that of the clock, in UTC, if not given.
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
}

/// Forms of proposals.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum AlternativesFormat {
    /// For people.
    Text,
    /// For machines; each proposal has its patch.
    Json,
}
