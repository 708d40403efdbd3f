//! `compare`.

use std::path::PathBuf;

use clap::{Args as Arguments, ValueEnum};

use super::brought::BroughtArgs;
use super::values::day;
use crate::spec::Date;

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
    /// Output format.
    #[arg(long, value_enum, default_value_t = CompareFormat::Text)]
    pub format: CompareFormat,
    /// Write another form to a file as well: `markdown=comment.md`. May be repeated.
    #[arg(long, value_name = "FORMAT=FILE")]
    pub output: Vec<CompareOutput>,
    /// What makes the exit code 1; several with commas between them: `regression,weakening`.
    #[arg(long, value_enum, value_delimiter = ',', value_name = "WHAT")]
    pub fail_on: Vec<CompareGate>,
    /// The baseline that `check` goes by, as both sides have it: what is added to it weakens the gate. The path from here, in a revision too; in a folder that is named, from that folder.
    #[arg(long, value_name = "FILE")]
    pub baseline: Option<PathBuf>,
    /// Least change that is shown, by unit or by the last word of a line's key: `dB=0.5`, `availability=0.01`, `m=1,0.5%`. May be repeated.
    #[arg(long, value_name = "NAME=NUMBER[,SHARE%]")]
    pub threshold: Vec<crate::compare::Threshold>,
    /// List every line that changes, not only the few that change most.
    #[arg(long)]
    pub all: bool,
    /// The day waivers are evaluated on, on both sides; that of the clock, in UTC, if not given.
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
    /// Make every place in the Markdown a link: the address that a path of the new side follows, with its commit in it.
    #[arg(long, value_name = "URL")]
    pub link_base: Option<String>,
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
    /// By the gate of the old side, a hop now fails, fails worse or is no longer judged, or there is a new error.
    Regression,
    /// The gate may let more through than before.
    Weakening,
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
