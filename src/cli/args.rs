//! The arguments, as typed.

use std::path::PathBuf;

use clap::{Args as Arguments, Parser, Subcommand, ValueEnum};

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
    /// Judge hops and say what is wrong, where, and what would mend it.
    Check(Check),
    /// Print the computed numbers of hops.
    Sheet(Sheet),
    /// Print packs as PDF: for the desk, or for the crew at one end.
    #[command(subcommand)]
    Pack(Pack),
    /// Print the manual of a rule, or list all rules.
    Explain(Explain),
    /// Write the JSON Schema of every kind of document.
    Schema(Schema),
    /// Make a small network to start from, or the form of a record.
    New(New),
}

/// Arguments of `check`.
#[derive(Debug, Arguments)]
pub struct Check {
    /// Files or folders to report on; the network around them is loaded all the same.
    #[arg(default_value = ".")]
    pub paths: Vec<PathBuf>,
    /// Form of the output.
    #[arg(long, value_enum, default_value_t = Format::Full)]
    pub format: Format,
    /// Least severity that makes the exit code 1.
    #[arg(long, value_enum, default_value_t = Level::Error)]
    pub fail_on: Level,
    /// Least severity that is shown.
    #[arg(long, value_enum, default_value_t = Level::Advice)]
    pub min_severity: Level,
    /// How it looks.
    #[command(flatten)]
    pub look: LookArgs,
}

/// How text output looks.
#[derive(Debug, Arguments)]
pub struct LookArgs {
    /// Colours. `auto` looks at `NO_COLOR`, `FORCE_COLOR`, `CLICOLOR_FORCE` and the terminal, in that order.
    #[arg(long, value_enum, default_value_t = When::Auto)]
    pub color: When,
    /// Box-drawing characters, or plain ASCII with `never`.
    #[arg(long, value_enum, default_value_t = When::Auto)]
    pub unicode: When,
    /// Columns to fill; 80 if not given.
    #[arg(long, value_parser = clap::value_parser!(u16).range(40..=400))]
    pub width: Option<u16>,
}

/// Arguments of `sheet`.
#[derive(Debug, Arguments)]
pub struct Sheet {
    /// Hops to print, by id; all of them if none is given.
    pub hops: Vec<String>,
    /// Folder of the network.
    #[arg(long, default_value = ".")]
    pub network: PathBuf,
    /// Form of the output.
    #[arg(long, value_enum, default_value_t = SheetFormat::Table)]
    pub format: SheetFormat,
    /// Add the method and the inputs under every line.
    #[arg(long)]
    pub sources: bool,
    /// Write the path profile of the one hop that is named as a drawing (SVG) into this file.
    #[arg(long, value_name = "FILE")]
    pub figure: Option<PathBuf>,
}

/// The packs.
#[derive(Debug, Subcommand)]
pub enum Pack {
    /// One pack a hop, to decide by: verdict, geometry, budget, power, grounding, methods.
    Design(PackArgs),
    /// One pack an end, to build by: site, cautions, mounting, cabling, alignment, record.
    Install(PackArgs),
    /// One record an end, to sign: as designed, tolerance, as built, verdict. Needs a `record` that came back.
    Acceptance(PackArgs),
}

/// Arguments of the packs.
#[derive(Debug, Arguments)]
pub struct PackArgs {
    /// Hops, by id; all of them if none is given. `install` and `acceptance` also take `HOP/a`, `HOP/b` and the ids of sites.
    pub ids: Vec<String>,
    /// Folder of the network.
    #[arg(long, default_value = ".")]
    pub network: PathBuf,
    /// Folder to write into.
    #[arg(long, default_value = "packs")]
    pub out: PathBuf,
    /// Print packs of hops with errors too, every page marked as a draft.
    #[arg(long)]
    pub draft: bool,
    /// Draw no progress bar, even at a terminal.
    #[arg(long)]
    pub no_progress: bool,
}

/// Arguments of `explain`.
#[derive(Debug, Arguments)]
pub struct Explain {
    /// Name of a rule.
    pub rule: Option<String>,
}

/// Arguments of `schema`.
#[derive(Debug, Arguments)]
pub struct Schema {
    /// Folder to write into.
    #[arg(long, default_value = "schema")]
    pub out: PathBuf,
}

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
}

/// Forms of findings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// With the YAML they are about.
    Full,
    /// A line each.
    Concise,
    /// For machines.
    Json,
}

/// Forms of a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum SheetFormat {
    /// For people.
    Table,
    /// For machines.
    Json,
}

/// A severity.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Level {
    /// Must not be built.
    Error,
    /// Likely to hurt.
    Warning,
    /// Worth knowing.
    Advice,
}

impl From<Level> for crate::rule::Severity {
    fn from(level: Level) -> Self {
        match level {
            Level::Error => Self::Error,
            Level::Warning => Self::Warning,
            Level::Advice => Self::Advice,
        }
    }
}

/// When to do something.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum When {
    /// As the surroundings suggest.
    Auto,
    /// In any case.
    Always,
    /// Not at all.
    Never,
}
