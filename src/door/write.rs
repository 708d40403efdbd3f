//! Writing a file whole or not at all.

use std::fs;
use std::io::{self, Write as _};
use std::path::Path;

/// Writes a file through a temporary one beside it, so that a reader never sees half of it. Makes missing folders.
///
/// # Errors
/// Whatever the system says; the old file, if any, is then as it was.
pub fn write_whole(path: &Path, bytes: &[u8]) -> io::Result<()> {
    if let Some(folder) = path.parent().filter(|folder| !folder.as_os_str().is_empty()) {
        fs::create_dir_all(folder)?;
    }
    let mut name = path.file_name().unwrap_or_default().to_os_string();
    name.push(format!(".{}.part", std::process::id()));
    let part = path.with_file_name(name);
    let written = fs::File::create(&part)
        .and_then(|mut file| file.write_all(bytes).and_then(|()| file.sync_all()))
        .and_then(|()| fs::rename(&part, path));
    if written.is_err() {
        // The first error is the one to report.
        let _ = fs::remove_file(&part);
    }
    written
}
