//! The arguments, as typed.

use std::path::PathBuf;

use clap::builder::{PossibleValuesParser, TypedValueParser};
use clap::{Args as Arguments, Parser, Subcommand, ValueEnum};

use crate::spec::{Date, Language};

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
    /// Record what is wrong today, so that only what is new or worse fails.
    #[command(subcommand)]
    Baseline(Baseline),
    /// Print the computed numbers of hops.
    Sheet(Sheet),
    /// Print packs as PDF: for the desk, or for the crew at one end.
    #[command(subcommand)]
    Pack(Pack),
    /// Say what changed in the numbers between two folders or revisions, and why.
    Compare(Compare),
    /// Print the manual of a rule, or list all rules.
    Explain(Explain),
    /// Write the JSON Schema of every kind of document.
    Schema(Schema),
    /// Make a small network to start from, or the form of a record.
    New(New),
}

/// Arguments of `check`.
#[derive(Debug, Arguments)]
#[allow(clippy::struct_excessive_bools, reason = "each is a switch of its own")]
pub struct Check {
    /// Files or folders to report on; the network around them is loaded all the same. `-` reads one file from stdin.
    #[arg(default_value = ".")]
    pub paths: Vec<PathBuf>,
    /// Form of the output.
    #[arg(long, value_enum, default_value_t = Format::Full)]
    pub format: Format,
    /// Write another form to a file as well, such as `sarif=report.sarif`; may be given several times.
    #[arg(long, value_name = "FORMAT=FILE", value_parser = Output::read)]
    pub output: Vec<Output>,
    /// What the file read from stdin is called: it takes the place of the file of that path in its network.
    #[arg(long, value_name = "PATH")]
    pub stdin_filename: Option<PathBuf>,
    /// The day waivers are held against, such as 2026-05-18; that of the clock, in UTC, if not given.
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
    /// Set aside what this file knows; only what is new or worse counts.
    #[arg(long, value_name = "FILE")]
    pub baseline: Option<PathBuf>,
    /// Show what waivers accept as well.
    #[arg(long)]
    pub show_waived: bool,
    /// Put what waivers accept into SARIF too, as suppressed.
    #[arg(long)]
    pub include_waived: bool,
    /// Exit with 0 though there are findings at the fail level.
    #[arg(long)]
    pub exit_zero: bool,
    /// How often each rule found something, instead of the findings themselves.
    #[arg(long)]
    pub statistics: bool,
    /// Only the findings, without the summary; twice, nothing but the exit code.
    #[arg(short, long, action = clap::ArgAction::Count)]
    pub quiet: u8,
    /// Say on stderr which files were used.
    #[arg(short, long, conflicts_with = "quiet")]
    pub verbose: bool,
    /// Least severity that makes the exit code 1.
    #[arg(long, value_enum, default_value_t = Level::Error)]
    pub fail_on: Level,
    /// Least severity that is shown.
    #[arg(long, value_enum, default_value_t = Level::Advice)]
    pub min_severity: Level,
    /// First make the mends that alter no value of the design: quote text, spell units and keys.
    #[arg(long)]
    pub fix: bool,
    /// Make the mends a rule has computed as well; they change the design, so look at each.
    #[arg(long)]
    pub fix_unsafe: bool,
    /// Print what `--fix` or `--fix-unsafe` would change as a patch, and write nothing; 1 if there is anything.
    #[arg(long)]
    pub diff: bool,
    /// How it looks.
    #[command(flatten)]
    pub look: LookArgs,
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
}

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
    /// The day waivers are held against, such as 2026-05-18; that of the clock, in UTC, if not given.
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
}

/// Data that lies outside of the repository; only the person who runs this may name it.
#[derive(Debug, Clone, Default, Arguments)]
pub struct BroughtArgs {
    /// Folder of ground heights, such as a national set: read in place of the one `terrain` of a network names.
    #[arg(long, value_name = "DIR")]
    pub terrain: Option<PathBuf>,
    /// Folder of the published map of rain rates: read in place of the one that `rain_map` names.
    #[arg(long, value_name = "DIR")]
    pub rain_map: Option<PathBuf>,
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
    /// Columns to fill; those of the terminal if not given, 80 where there is none.
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
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
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
    /// Language of the pages; that of the network if not given.
    #[arg(long, value_parser = language())]
    pub language: Option<Language>,
    /// Write plain PDF: the same pages, neither PDF/A nor PDF/UA, with nothing attached.
    #[arg(long)]
    pub plain: bool,
    /// Print packs of hops with errors too, every page marked as a draft.
    #[arg(long)]
    pub draft: bool,
    /// The day waivers are held against, such as 2026-05-18; that of the clock, in UTC, if not given.
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
    /// Draw no progress bar, even at a terminal.
    #[arg(long)]
    pub no_progress: bool,
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
}

/// Arguments of `compare`.
#[derive(Debug, Arguments)]
pub struct Compare {
    /// What it was: a folder, or a git revision of the network here.
    #[arg(required_unless_present = "base", conflicts_with = "base")]
    pub old: Option<String>,
    /// What it is: a folder or a revision; the network here if it is not named.
    #[arg(conflicts_with = "base")]
    pub new: Option<String>,
    /// Compare the network here with where it parted from this revision.
    #[arg(long, value_name = "REV")]
    pub base: Option<String>,
    /// Folder of the network here.
    #[arg(long, default_value = ".")]
    pub network: PathBuf,
    /// Form of the output.
    #[arg(long, value_enum, default_value_t = CompareFormat::Text)]
    pub format: CompareFormat,
    /// Write another form to a file as well: `markdown=comment.md`. May be repeated.
    #[arg(long, value_name = "FORMAT=FILE")]
    pub output: Vec<CompareOutput>,
    /// What makes the exit code 1: a hop that now fails or cannot be computed any more and every new error, or any change.
    #[arg(long, value_enum, default_value_t = CompareGate::Never)]
    pub fail_on: CompareGate,
    /// Least change that is shown, by unit or by the last word of a line's key: `dB=0.5`, `availability=0.01`, `m=1,0.5%`. May be repeated.
    #[arg(long, value_name = "NAME=NUMBER[,SHARE%]")]
    pub threshold: Vec<crate::compare::Threshold>,
    /// List every line that changes, not only the few that change most.
    #[arg(long)]
    pub all: bool,
    /// The day waivers are held against, on both sides; that of the clock, in UTC, if not given.
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
    /// Columns of the text; 80 if not given.
    #[arg(long, value_parser = clap::value_parser!(u16).range(40..=400))]
    pub width: Option<u16>,
    /// Most characters of the Markdown; the least important is left out first.
    #[arg(long, default_value_t = 60_000, value_parser = clap::value_parser!(u32).range(2_000..=1_000_000))]
    pub budget: u32,
    /// Key in the hidden mark of the Markdown, by which a script finds its comment again; the ids of the networks if not given.
    #[arg(long)]
    pub key: Option<String>,
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
}

/// Forms of a comparison.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum CompareFormat {
    /// For people at a terminal.
    Text,
    /// For a comment on a change.
    Markdown,
    /// For machines.
    Json,
}

/// What makes `compare` fail.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum CompareGate {
    /// Nothing.
    Never,
    /// Something got worse than it may.
    Regression,
    /// Anything that is listed.
    Any,
}

/// A form and the file it goes to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CompareOutput {
    /// The form.
    pub format: CompareFormat,
    /// The file.
    pub file: PathBuf,
}

impl std::str::FromStr for CompareOutput {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let (format, file) = text.split_once('=').unwrap_or((text, ""));
        match (CompareFormat::from_str(format, true), file) {
            (Ok(_), "") => Err(format!("`{text}` names no file: write `{format}=FILE`")),
            (Ok(format), file) => Ok(Self { format, file: file.into() }),
            (Err(_), _) => Err(format!("there is no form `{format}`: text, markdown or json")),
        }
    }
}

/// Reads a day.
fn day(text: &str) -> Result<Date, String> {
    Date::read(text).ok_or_else(|| "no day of the calendar: write YYYY-MM-DD".into())
}

/// Reads the code of a language.
fn language() -> impl TypedValueParser<Value = Language> {
    PossibleValuesParser::new(Language::ALL.map(Language::code))
        .try_map(|code| Language::of(&code).ok_or("no such language"))
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
    /// What lies outside.
    #[command(flatten)]
    pub brought: BroughtArgs,
}

/// Forms of findings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// With the YAML they are about.
    Full,
    /// A line each.
    Concise,
    /// One thing after the other, without drawing: to be heard.
    Narrated,
    /// For machines; `schema/report.json` describes it.
    Json,
    /// SARIF 2.1.0, for code scanning.
    Sarif,
    /// Annotations of GitHub's workflows.
    Github,
    /// The code quality report of GitLab.
    Gitlab,
    /// A test report: a case each hop and rule.
    Junit,
    /// A table, for the summary of a job.
    Markdown,
}

impl Format {
    /// Whether people read it on a terminal; the others are whole documents even when there is nothing to say.
    #[must_use]
    pub fn is_text(self) -> bool {
        matches!(self, Self::Full | Self::Concise | Self::Narrated)
    }
}

/// A form and the file it goes to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Output {
    /// The form.
    pub format: Format,
    /// The file.
    pub path: PathBuf,
}

impl Output {
    /// Reads `FORMAT=FILE`.
    ///
    /// # Errors
    /// No such form, or no file.
    pub fn read(text: &str) -> Result<Self, String> {
        let forms = || {
            let named = Format::value_variants().iter().filter_map(ValueEnum::to_possible_value);
            named.map(|value| value.get_name().to_owned()).collect::<Vec<_>>().join(", ")
        };
        match text.split_once('=') {
            Some((form, path)) if !path.is_empty() => {
                let format =
                    Format::from_str(form, false).map_err(|_| format!("`{form}` is no form; one of: {}", forms()))?;
                Ok(Self { format, path: path.into() })
            }
            _ => Err(format!("write a form and a file, such as `sarif=report.sarif`; forms: {}", forms())),
        }
    }
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

impl From<Level> for crate::finding::rule::Severity {
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
