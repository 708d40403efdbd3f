//! What a command loads: the paths that were named, with the data that lies outside.

use std::path::PathBuf;

use super::Stop;
use super::args::BroughtArgs;
use crate::network::{Brought, Scope};

/// The scope of paths.
pub(super) fn scope(paths: &[PathBuf], args: &BroughtArgs) -> Result<Scope, Stop> {
    Ok(Scope::of(paths).with_brought(brought(args)?))
}

/// The data that lies outside.
pub(super) fn brought(args: &BroughtArgs) -> Result<Brought, Stop> {
    Brought::named(args.terrain.as_deref(), args.rain_map.as_deref()).map_err(Stop::Unknown)
}
