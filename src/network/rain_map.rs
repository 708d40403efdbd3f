//! Reading the three texts of a rain map that a network brings along.

use std::fs;
use std::path::Path;

/// The names under which the map is published, rates first.
const NAMES: [&str; 3] = ["R001.TXT", "Lat_R001.TXT", "Lon_R001.TXT"];

/// The published texts have 37 MB each; a file beyond this is something else.
const MAX_BYTES: u64 = 128 << 20;

/// The texts of rates, latitudes and longitudes in a folder.
///
/// # Errors
/// One of the files is not there, too large or no text: a clause that names it.
pub fn read_rain_map(folder: &Path) -> Result<[String; 3], String> {
    let [rates, latitudes, longitudes] = NAMES.map(|name| read(folder, name));
    Ok([rates?, latitudes?, longitudes?])
}

fn read(folder: &Path, name: &str) -> Result<String, String> {
    let path = folder.join(name);
    let found = fs::metadata(&path).map_err(|error| format!("`{name}` cannot be read: {error}"))?;
    if !found.is_file() || found.len() > MAX_BYTES {
        return Err(format!("`{name}` is no file of at most {} MiB", MAX_BYTES >> 20));
    }
    let bytes = fs::read(&path).map_err(|error| format!("`{name}` cannot be read: {error}"))?;
    String::from_utf8(bytes).map_err(|_| format!("`{name}` is no text"))
}
