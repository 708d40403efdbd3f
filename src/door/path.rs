//! Paths as text: cleaned, made whole, shortened. Nothing here asks the file system what is there.

use std::path::{Component, Path, PathBuf, absolute};

/// A path without the `.` and `..` in it; links are not looked at. Of a relative path that leads above its start the
/// leading `..` stay.
#[must_use]
pub fn clean(path: &Path) -> PathBuf {
    path.components().fold(PathBuf::new(), |mut clean, part| {
        match part {
            Component::CurDir => {}
            Component::ParentDir if clean.file_name().is_some() => {
                clean.pop();
            }
            // Above the root of the file system is the root.
            Component::ParentDir if clean.has_root() => {}
            part => clean.push(part),
        }
        clean
    })
}

/// The path from the root of the file system, cleaned.
#[must_use]
pub fn full(path: &Path) -> PathBuf {
    let path = if path.as_os_str().is_empty() { Path::new(".") } else { path };
    clean(&absolute(path).unwrap_or_else(|_| path.to_path_buf()))
}

/// The folder above, as short as it can be named from where one stands.
#[must_use]
pub fn above(path: &Path) -> PathBuf {
    match path.components().next_back() {
        None | Some(Component::CurDir) => PathBuf::from(".."),
        Some(Component::ParentDir) => path.join(".."),
        Some(_) => match path.parent() {
            Some(above) if above.as_os_str().is_empty() => PathBuf::from("."),
            Some(above) => above.to_path_buf(),
            None => path.to_path_buf(),
        },
    }
}

/// A file that a document in `folder` names. A network names files from its own folders, so that it means the same
/// wherever it lies.
///
/// # Errors
/// The name starts at the root of the system: a clause that says so.
pub fn named(folder: &Path, name: &str) -> Result<PathBuf, String> {
    let rooted = |part| matches!(part, Component::RootDir | Component::Prefix(_));
    if Path::new(name).components().any(rooted) {
        return Err(format!("`{name}` is not taken from this folder: it starts at the root of the system"));
    }
    Ok(clean(&folder.join(name)))
}

/// A path as it is printed by someone who stands `here`, with forward slashes.
#[must_use]
pub fn shown(path: &Path, here: Option<&Path>) -> String {
    let short = here.and_then(|here| path.strip_prefix(here).ok()).unwrap_or(path);
    let text = short.to_string_lossy().replace('\\', "/");
    text.strip_prefix("./").map(str::to_owned).unwrap_or(text)
}

#[cfg(test)]
mod tests {
    use super::{above, clean, full, named};
    use std::path::Path;

    #[test]
    fn dots_are_followed_before_anything_is_read() {
        for (path, cleaned) in [
            ("a/hops/../profiles/./x.csv", "a/profiles/x.csv"),
            ("../x.csv", "../x.csv"),
            ("a/../../x", "../x"),
            ("/../a/./b/../c", "/a/c"),
            ("", ""),
        ] {
            assert_eq!(clean(Path::new(path)), Path::new(cleaned), "{path}");
        }
        assert_eq!(full(Path::new("/a/./b/../c")), Path::new("/a/c"));
    }

    #[test]
    fn the_folder_above_is_named_from_where_one_stands() {
        for (path, up) in [("a/b", "a"), ("a", "."), (".", ".."), ("..", "../.."), ("./a", "."), ("/", "/")] {
            assert_eq!(above(Path::new(path)), Path::new(up), "{path}");
        }
    }

    #[test]
    fn a_document_names_files_from_its_own_folder() {
        assert_eq!(named(Path::new("net/hops"), "../x.csv").as_deref(), Ok(Path::new("net/x.csv")));
        assert!(named(Path::new("net"), "/etc/passwd").is_err());
    }
}
