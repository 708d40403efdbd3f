//! A profile as it was read from a file of its own.

use std::collections::HashMap;
use std::sync::Arc;

use crate::finding::Spot;
use crate::place::{DocumentId, FileId};
use crate::spec::ObstacleKind;
use crate::units::Metres;

/// A point of a profile that was read from a file.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ProfileRow {
    /// Distance from end `a`.
    pub distance: Metres,
    /// Ground above sea level.
    pub ground: Metres,
    /// What stands there, and how high above the ground.
    pub obstacle: Option<(ObstacleKind, Metres)>,
    /// Its line in the file, in bytes.
    pub line: (u32, u32),
}

/// A profile that was read from a file.
#[derive(Debug)]
pub struct ProfileFile {
    /// The file.
    pub file: FileId,
    /// Its points, in order of distance; at least two.
    pub rows: Arc<[ProfileRow]>,
}

/// The profiles of a library by the hop that names them; for one that cannot be used, where that is shown.
pub type ProfileFiles = HashMap<DocumentId, Result<ProfileFile, Spot>>;
