//! What lies outside of the repository.

use std::path::PathBuf;

use clap::Args as Arguments;

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
