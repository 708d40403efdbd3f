//! Reading the three texts of a rain map.

use std::path::Path;

use crate::door::{Store, What};

/// The names under which the map is published, rates first.
const NAMES: [&str; 3] = ["R001.TXT", "Lat_R001.TXT", "Lon_R001.TXT"];

/// The published texts have 37 MB each; a file beyond this is something else.
const MAX_BYTES: u64 = 128 << 20;

/// Whether a folder holds the files of a map; what stands in them is not looked at.
pub(super) fn rain_map_is_there(store: &dyn Store, folder: &Path) -> Result<(), String> {
    NAMES.iter().try_for_each(|name| match store.look(&folder.join(name)) {
        Ok(found) if found.what == What::File => Ok(()),
        Ok(_) => Err(format!("`{name}` is not a file")),
        Err(refused) => Err(format!("`{name}` cannot be read: {refused}")),
    })
}

/// The texts of rates, latitudes and longitudes in a folder.
pub(super) fn read_rain_map(store: &dyn Store, folder: &Path) -> Result<[String; 3], String> {
    let read = |name: &str| {
        let bytes = store.read(&folder.join(name), MAX_BYTES);
        let bytes = bytes.map_err(|refused| format!("`{name}` cannot be read: {refused}"))?;
        String::from_utf8(bytes).map_err(|_| format!("`{name}` is not text"))
    };
    let [rates, latitudes, longitudes] = NAMES.map(read);
    Ok([rates?, latitudes?, longitudes?])
}
