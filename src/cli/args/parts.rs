//! `parts`.

use clap::Args as Arguments;

/// Arguments of `parts`.
#[derive(Debug, Arguments)]
pub struct PartsArgs {
    /// Words that name, kind or title of a part must hold, all of them; or the name of one part, which is printed in full.
    pub words: Vec<String>,
}
