//! What a network reads beside its documents: tiles of ground heights and maps of rain.
//!
//! A network names folders of its own. What lies outside of its repository is named on the command line, by the person
//! whose machine it is, and takes the place of what the network names.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::rain_map::{rain_map_is_there, read_rain_map};
use super::tiles::{TileFile, tile_files};
use crate::door::path::named;
use crate::door::{Folder, Store};

/// Data from outside of the repository.
#[derive(Debug, Clone, Default)]
pub struct Brought {
    /// Folder of tiles of ground heights.
    pub terrain: Option<PathBuf>,
    /// Folder of the published map of rain rates.
    pub rain_map: Option<PathBuf>,
}

impl Brought {
    /// The folders that somebody named, which must hold what they are named for: a slip is no finding about a network.
    ///
    /// # Errors
    /// A folder is not there or holds nothing of the kind: a clause that starts with the option.
    pub fn named(terrain: Option<&Path>, rain_map: Option<&Path>) -> Result<Self, String> {
        if let Some(folder) = terrain {
            let store: Arc<dyn Store> = Arc::new(Folder::around(folder));
            tile_files(&store, folder).map_err(|why| format!("--terrain {}: {why}", folder.display()))?;
        }
        if let Some(folder) = rain_map {
            let there = rain_map_is_there(&Folder::around(folder), folder);
            there.map_err(|why| format!("--rain-map {}: {why}", folder.display()))?;
        }
        Ok(Self { terrain: terrain.map(Path::to_path_buf), rain_map: rain_map.map(Path::to_path_buf) })
    }
}

/// Where one network reads.
#[derive(Debug, Clone, Copy)]
pub struct Inputs<'s> {
    pub(super) folder: &'s Path,
    pub(super) store: Option<&'s Arc<dyn Store>>,
    pub(super) brought: &'s Brought,
}

impl Inputs<'_> {
    /// The tiles in the folder a network names, or in the one that was brought.
    ///
    /// # Errors
    /// The folder cannot be listed or holds none: a clause that says so.
    pub fn tiles(&self, name: &str) -> Result<Vec<TileFile>, String> {
        let (folder, store) = self.folder(name, self.brought.terrain.as_deref(), "--terrain")?;
        tile_files(&store, &folder)
    }

    /// The texts of the map in the folder a network names, or in the one that was brought.
    ///
    /// # Errors
    /// One of the files is not there, too large or no text: a clause that names it.
    pub fn rain_map(&self, name: &str) -> Result<[String; 3], String> {
        let (folder, store) = self.folder(name, self.brought.rain_map.as_deref(), "--rain-map")?;
        read_rain_map(&*store, &folder)
    }

    /// The text of a file.
    pub(super) fn text(&self, path: &Path, most: u64) -> Result<String, String> {
        let name = path.display();
        let store = self.store.ok_or("there is nothing to read from")?;
        let bytes = store.read(path, most).map_err(|refused| format!("`{name}` cannot be read: {refused}"))?;
        String::from_utf8(bytes).map_err(|_| format!("`{name}` is not UTF-8 text"))
    }

    fn folder(&self, name: &str, brought: Option<&Path>, option: &str) -> Result<(PathBuf, Arc<dyn Store>), String> {
        if let Some(folder) = brought {
            return Ok((folder.to_path_buf(), Arc::new(Folder::around(folder))));
        }
        let hint = |why: String| format!("{why}. Data outside is named by whoever runs this: `{option} DIR`");
        let folder = named(self.folder, name).map_err(hint)?;
        let store = Arc::clone(self.store.ok_or("there is nothing to read from")?);
        match store.look(&folder) {
            Ok(_) => Ok((folder, store)),
            Err(refused) => Err(hint(format!("`{name}`: {refused}"))),
        }
    }
}
