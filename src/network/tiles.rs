//! The files of ground heights in a folder that a network brings along. What their bytes mean is not known here.

use std::fs::{self, File};
use std::io::{self, BufReader};
use std::path::{Path, PathBuf};

/// Files looked at in one folder; the rest of a larger one would take too long to open.
const MOST_FILES: usize = 10_000;

/// A file of ground heights.
#[derive(Debug, Clone)]
pub struct TileFile {
    /// Its name without folder and ending.
    pub name: String,
    /// Whether it is a TIFF; else it has the ending `.hgt`.
    pub tiff: bool,
    /// How many bytes it has.
    pub bytes: u64,
    path: PathBuf,
}

impl TileFile {
    /// The file, to read through.
    ///
    /// # Errors
    /// Whatever the system says.
    pub fn open(&self) -> io::Result<BufReader<File>> {
        File::open(&self.path).map(BufReader::new)
    }

    /// All its bytes.
    ///
    /// # Errors
    /// Whatever the system says.
    pub fn read(&self) -> io::Result<Vec<u8>> {
        fs::read(&self.path)
    }

    /// Its name with ending, as messages have it.
    #[must_use]
    pub fn shown(&self) -> String {
        self.path.file_name().unwrap_or_default().to_string_lossy().into_owned()
    }
}

/// The files of ground heights in a folder, in order of name; folders below it are not looked into.
///
/// # Errors
/// The folder cannot be listed or holds none: a clause that says so.
pub fn tile_files(folder: &Path) -> Result<Vec<TileFile>, String> {
    let entries = fs::read_dir(folder).map_err(|error| format!("the folder cannot be read: {error}"))?;
    let mut found: Vec<TileFile> = entries
        .flatten()
        .filter_map(|entry| {
            let path = entry.path();
            let ending = path.extension()?.to_str()?.to_ascii_lowercase();
            let tiff = ["tif", "tiff"].contains(&ending.as_str());
            let about = fs::metadata(&path).ok().filter(|about| about.is_file() && (tiff || ending == "hgt"))?;
            let name = path.file_stem()?.to_str()?.to_owned();
            Some(TileFile { name, tiff, bytes: about.len(), path })
        })
        .take(MOST_FILES)
        .collect();
    found.sort_by(|one, other| one.path.cmp(&other.path));
    if found.is_empty() { Err("the folder holds no `.hgt` and no `.tif` file".into()) } else { Ok(found) }
}
