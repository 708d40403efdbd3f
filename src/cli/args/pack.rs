//! `pack`.

use std::path::PathBuf;

use clap::{Args as Arguments, Subcommand};

use super::brought::BroughtArgs;
use super::values::{day, language};
use crate::spec::{Date, Language};

/// The packs.
#[derive(Debug, Subcommand)]
pub enum Pack {
    /// One pack a hop, to decide by: verdict, geometry, budget, power, grounding, methods.
    Design(PackArgs),
    /// One page a hop: what an application for a licence asks for at each end.
    Licence(PackArgs),
    /// One pack an end, to build by: site, cautions, mounting, cabling, alignment, record.
    Install(PackArgs),
    /// One record an end, to sign: as designed, tolerance, as built, verdict. Needs a `record` that came back.
    Acceptance(PackArgs),
    /// One pack a site, for one visit: the site once, what stands on each support and who is live, then the tasks of each end.
    Site(PackArgs),
    /// One pack for the whole network: map, hops, frequency plan, services, open findings, parts, visits.
    Network(NetworkPackArgs),
}

/// Arguments of the pack of a network.
#[derive(Debug, Arguments)]
pub struct NetworkPackArgs {
    /// Folder of the network.
    #[arg(long, default_value = ".")]
    pub network: PathBuf,
    /// Folder to write into.
    #[arg(long, default_value = "packs")]
    pub out: PathBuf,
    /// Language of the pages; that of the network if not given.
    #[arg(long, value_parser = language())]
    pub language: Option<Language>,
    /// Write plain PDF: the same pages, neither PDF/A nor PDF/UA, with nothing attached.
    #[arg(long)]
    pub plain: bool,
    /// Print it with errors too, every page marked as a draft.
    #[arg(long)]
    pub draft: bool,
    /// The date on which waivers are evaluated, such as 2026-05-18; that of the clock, in UTC, if not given.
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
    /// What is known to be wrong, as `baseline` wrote it: it is counted and not listed.
    #[arg(long, value_name = "FILE")]
    pub baseline: Option<PathBuf>,
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
}

/// Arguments of the packs.
#[derive(Debug, Arguments)]
pub struct PackArgs {
    /// Hops, by id; all of them if none is given. `install` and `acceptance` also take `HOP/a`, `HOP/b` and the ids of sites;
    /// `site` takes the ids of sites alone.
    pub ids: Vec<String>,
    /// Folder of the network.
    #[arg(long, default_value = ".")]
    pub network: PathBuf,
    /// Folder to write into.
    #[arg(long, default_value = "packs")]
    pub out: PathBuf,
    /// Language of the pages; that of the network if not given.
    #[arg(long, value_parser = language())]
    pub language: Option<Language>,
    /// Write plain PDF: the same pages, neither PDF/A nor PDF/UA, with nothing attached.
    #[arg(long)]
    pub plain: bool,
    /// Print packs of hops with errors too, every page marked as a draft.
    #[arg(long)]
    pub draft: bool,
    /// The date on which waivers are evaluated, such as 2026-05-18; that of the clock, in UTC, if not given.
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
    /// Draw no progress bar, even at a terminal.
    #[arg(long)]
    pub no_progress: bool,
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
}
