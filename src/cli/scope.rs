//! What a command loads: the paths that were named, with the data that lies outside.

use std::path::PathBuf;

use super::args::BroughtArgs;
use crate::network::{Brought, Scope};

/// The scope of paths.
pub(super) fn scope(paths: &[PathBuf], args: &BroughtArgs) -> Scope {
    Scope::of(paths).with_brought(brought(args))
}

/// The data that lies outside.
pub(super) fn brought(args: &BroughtArgs) -> Brought {
    Brought { terrain: args.terrain.clone(), rain_map: args.rain_map.clone() }
}
