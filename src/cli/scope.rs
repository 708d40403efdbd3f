//! What a command loads: the paths that were named, with the data that lies outside.

use std::path::PathBuf;

use super::Stop;
use super::args::BroughtArgs;
use crate::network::{Brought, Scope};

/// The scope of paths.
pub(super) fn scope(paths: &[PathBuf], args: &BroughtArgs) -> Result<Scope, Stop> {
    current(Scope::of(paths)).and_then(|scope| Ok(scope.with_brought(brought(args)?)))
}

/// The scope, if none of its networks asks for a newer program: what else were said of one might be wrong.
pub(super) fn current(scope: Scope) -> Result<Scope, Stop> {
    match scope.too_old() {
        Some(asks) => Err(Stop::Unknown(format!("{asks}: install that version, or a newer one"))),
        None => Ok(scope),
    }
}

/// The data that lies outside.
pub(super) fn brought(args: &BroughtArgs) -> Result<Brought, Stop> {
    Brought::named(args.terrain.as_deref(), args.rain_map.as_deref()).map_err(Stop::Unknown)
}
