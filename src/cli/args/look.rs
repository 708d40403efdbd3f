//! How text output looks.

use clap::{Args as Arguments, ValueEnum};

/// How text output looks.
#[derive(Debug, Arguments)]
pub struct LookArgs {
    /// Colours. `auto` looks at `NO_COLOR`, `FORCE_COLOR`, `CLICOLOR_FORCE` and the terminal, in that order.
    #[arg(long, value_enum, default_value_t = When::Auto)]
    pub color: When,
    /// Box-drawing characters, or plain ASCII with `never`.
    #[arg(long, value_enum, default_value_t = When::Auto)]
    pub unicode: When,
    /// Columns to fill; those of the terminal if not given, else those of `COLUMNS`, else 80.
    #[arg(long, value_parser = clap::value_parser!(u16).range(40..=400))]
    pub width: Option<u16>,
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
