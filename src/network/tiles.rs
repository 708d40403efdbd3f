//! The files of ground heights in a folder. What their bytes mean is not known here.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use crate::door::{Store, Stream, What};

/// Files looked at in one folder; the rest of a larger one would take too long to open.
const MOST_FILES: usize = 10_000;

/// The largest tile: a `GeoTIFF` of some ten thousand points each way.
const MOST_BYTES: u64 = 512 << 20;

/// A file of ground heights.
#[derive(Debug, Clone)]
pub struct TileFile {
    /// Its name without folder and ending.
    pub name: String,
    /// Whether it is a TIFF; else it has the ending `.hgt`.
    pub tiff: bool,
    bytes: Result<u64, String>,
    path: PathBuf,
    store: Arc<dyn Store>,
}

impl TileFile {
    /// How many bytes it has.
    ///
    /// # Errors
    /// Why it is not read.
    pub fn bytes(&self) -> Result<u64, String> {
        self.bytes.clone()
    }

    /// The file, to read through.
    ///
    /// # Errors
    /// Why it is not read.
    pub fn open(&self) -> Result<Box<dyn Stream>, String> {
        self.store.open(&self.path, MOST_BYTES).map_err(|refused| refused.detail)
    }

    /// All its bytes.
    ///
    /// # Errors
    /// Why it is not read.
    pub fn read(&self) -> Result<Vec<u8>, String> {
        self.store.read(&self.path, MOST_BYTES).map_err(|refused| refused.detail)
    }

    /// Its name with ending, as messages have it.
    #[must_use]
    pub fn shown(&self) -> String {
        self.path.file_name().unwrap_or_default().to_string_lossy().into_owned()
    }
}

/// The files of ground heights in a folder, in order of name; folders below it are not looked into.
pub(super) fn tile_files(store: &Arc<dyn Store>, folder: &Path) -> Result<Vec<TileFile>, String> {
    let names = store.list(folder).map_err(|refused| format!("the folder cannot be read: {refused}"))?;
    let tile = |named: &crate::door::Named| {
        let path = folder.join(&named.name);
        let ending = path.extension()?.to_str()?.to_ascii_lowercase();
        let tiff = ["tif", "tiff"].contains(&ending.as_str());
        (tiff || ending == "hgt").then_some(())?;
        let bytes = match store.look(&path) {
            Ok(about) if about.what == What::Folder => return None,
            Ok(about) => Ok(about.bytes),
            Err(refused) => Err(refused.detail),
        };
        let name = path.file_stem()?.to_str()?.to_owned();
        Some(TileFile { name, tiff, bytes, path, store: Arc::clone(store) })
    };
    let found: Vec<TileFile> = names.iter().filter_map(tile).take(MOST_FILES).collect();
    if found.is_empty() { Err("the folder holds no `.hgt` and no `.tif` file".into()) } else { Ok(found) }
}
