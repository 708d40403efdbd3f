//! `check`.

use std::path::PathBuf;

use clap::{Args as Arguments, ValueEnum};

use super::brought::BroughtArgs;
use super::form::{Format, Output};
use super::look::LookArgs;
use super::values::day;
use crate::spec::Date;

/// Arguments of `check`.
#[derive(Debug, Arguments)]
#[allow(clippy::struct_excessive_bools, reason = "each is a switch of its own")]
pub struct Check {
    /// Files or folders to report on, the network around them is loaded all the same; or hops of the network here by id, pattern or `site:ID`. `-` reads one file from stdin.
    #[arg(default_value = ".")]
    pub paths: Vec<PathBuf>,
    /// Output format.
    #[arg(long, value_enum, default_value_t = Format::Full)]
    pub format: Format,
    /// Write another form to a file as well, such as `sarif=report.sarif`; may be given several times.
    #[arg(long, value_name = "FORMAT=FILE", value_parser = Output::read)]
    pub output: Vec<Output>,
    /// What the file read from stdin is called: it takes the place of the file of that path in its network.
    #[arg(long, value_name = "PATH")]
    pub stdin_filename: Option<PathBuf>,
    /// The date on which waivers are evaluated, such as 2026-05-18; that of the clock, in UTC, if not given.
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
    /// Set aside what this file knows; only what is new or worse counts.
    #[arg(long, value_name = "FILE")]
    pub baseline: Option<PathBuf>,
    /// Judge by the gate of a git revision: its rules, limits, objectives, codes, climate, waivers and, with `--baseline`, its baseline. In CI, the branch that a change is to go to.
    #[arg(long, value_name = "REV")]
    pub policy_from: Option<String>,
    /// Stay, and judge again whenever a file of the network changes. Ends when it is interrupted.
    #[arg(long, conflicts_with_all = ["fix", "fix_unsafe", "diff", "stdin_filename"])]
    pub watch: bool,
    /// With `--watch`, look for changes this often instead of being told: for folders over a network.
    #[arg(long, value_name = "SECONDS", requires = "watch", value_parser = clap::value_parser!(u64).range(1..=3600))]
    pub poll: Option<u64>,
    /// With `--watch`, clear the terminal before each report.
    #[arg(long, requires = "watch")]
    pub clear: bool,
    /// Show what follows from other findings too, and every end that shares a fault by itself; in `JUnit`, the rules that pass as well.
    #[arg(long)]
    pub all: bool,
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
    /// First make the fixes that alter no value of the design: quote text, spell units and keys.
    #[arg(long)]
    pub fix: bool,
    /// Make the fixes a rule has computed as well; they change the design, so look at each.
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
