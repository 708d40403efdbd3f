//! `check --fix`: mend files, or show what would be mended.

use std::fs;

use super::args::Check;
use super::{Exit, Stop, say};
use crate::door::write::write_whole;
use crate::fix::{Fixed, Mended, diff, fix};
use crate::network::Scope;
use crate::text::plain::{Form, inert, spelled};

/// Prints the mends as a patch and writes nothing.
pub(super) fn show(args: &Check) -> Result<Exit, Stop> {
    let fixed = fix(&Scope::of(&args.paths), args.fix_unsafe);
    say_left(&fixed);
    let patch: String = fixed.files.iter().map(diff).collect();
    say::out(&patch)?;
    if inert(&patch, Form::People) != patch {
        say::aside("the patch holds characters or commands that are spelled out above: it is to be read, not applied");
    }
    Ok(if fixed.files.is_empty() { Exit::Clean } else { Exit::Findings })
}

/// Writes the mends.
pub(super) fn make(args: &Check) -> Result<(), Stop> {
    let fixed = fix(&Scope::of(&args.paths), args.fix_unsafe);
    for file in &fixed.files {
        write(file)?;
    }
    say_left(&fixed);
    let (made, files) = (fixed.made, fixed.files.len());
    if made > 0 {
        let (mends, in_files) = (if made == 1 { "mend" } else { "mends" }, if files == 1 { "file" } else { "files" });
        say::aside(&format!("{made} {mends} made in {files} {in_files}"));
    }
    Ok(())
}

fn say_left(fixed: &Fixed) {
    for left in &fixed.left {
        say::aside(&format!("not mended: {}", spelled(left)));
    }
}

/// Writes a file whole, where a link leads and with the rights it had, unless somebody else has changed it meanwhile.
fn write(file: &Mended) -> Result<(), Stop> {
    let failed = |error| Stop::Write { path: file.path.clone(), error };
    let path = fs::canonicalize(&file.origin).map_err(failed)?;
    let rights = fs::metadata(&path).map_err(failed)?.permissions();
    if fs::read_to_string(&path).map_err(failed)? != file.before {
        return Err(failed(std::io::Error::other("it has changed since it was read; run again")));
    }
    if rights.readonly() {
        return Err(failed(std::io::Error::from(std::io::ErrorKind::PermissionDenied)));
    }
    write_whole(&path, file.after.as_bytes()).and_then(|()| fs::set_permissions(&path, rights)).map_err(failed)
}
