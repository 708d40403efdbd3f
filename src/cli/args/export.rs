//! `export`.

use std::path::PathBuf;

use clap::{Args as Arguments, ValueEnum};

use super::brought::BroughtArgs;
use super::values::{day, dialect};
use crate::spec::{Date, Dialect};

/// Arguments of `export`.
#[derive(Debug, Arguments)]
pub struct Export {
    /// What is written.
    #[arg(value_enum)]
    pub what: ExportWhat,
    /// Folder of the network.
    #[arg(long, default_value = ".")]
    pub network: PathBuf,
    /// File to write into; stdout if not given.
    #[arg(long, value_name = "FILE")]
    pub out: Option<PathBuf>,
    /// How tables separate cells and write decimals.
    #[arg(long, value_parser = dialect(), default_value = "comma")]
    pub dialect: Dialect,
    /// The date on which waivers are evaluated, such as 2026-05-18; that of the clock, in UTC, if not given.
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
}

/// What can be written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum ExportWhat {
    /// A map: sites and hops with verdict, levels and margins, as `GeoJSON`.
    Geojson,
    /// The same as KML.
    Kml,
    /// A table of all computed numbers: a row a hop, a column a line.
    Sheet,
    /// A table of what is bought for all ends together.
    Bill,
    /// A table of what an application for a licence asks for: a row for each end that sends.
    Licence,
    /// A table of the sites, as `import sites` reads it.
    Sites,
    /// A table of the hops, as `import hops` reads it.
    Hops,
}
