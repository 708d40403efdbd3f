//! `check --fix`: fix files, or show what would be fixed.

use super::args::Check;
use super::scope::scope;
use super::{Exit, Stop, say};
use crate::door::write::mend;
use crate::fix::{Fixed, diff, fix};
use crate::text::plain::{Form, inert, spelled};

/// Prints the fixes as a patch and writes nothing.
pub(super) fn show(args: &Check) -> Result<Exit, Stop> {
    let fixed = fix(&scope(&args.paths, &args.brought)?, args.fix_unsafe);
    say_left(&fixed);
    let patch: String = fixed.files.iter().map(diff).collect();
    say::out(&patch)?;
    if inert(&patch, Form::People) != patch {
        say::aside("the patch holds characters or commands that are spelled out above: it is to be read, not applied");
    }
    Ok(if fixed.files.is_empty() { Exit::Clean } else { Exit::Findings })
}

/// Writes the fixes.
pub(super) fn make(args: &Check) -> Result<(), Stop> {
    let scope = scope(&args.paths, &args.brought)?;
    let fixed = fix(&scope, args.fix_unsafe);
    for file in &fixed.files {
        let root = scope.folders().into_iter().find(|root| file.origin.starts_with(root)).unwrap_or_default();
        let mended = mend(&root, &file.origin, &file.before, &file.after);
        mended.map_err(|error| Stop::Write { path: file.path.clone(), error })?;
    }
    say_left(&fixed);
    let (made, files) = (fixed.made, fixed.files.len());
    if made > 0 {
        let (mends, in_files) = (if made == 1 { "fix" } else { "fixes" }, if files == 1 { "file" } else { "files" });
        say::aside(&format!("{made} {mends} applied in {files} {in_files}"));
    }
    Ok(())
}

fn say_left(fixed: &Fixed) {
    for left in &fixed.left {
        say::aside(&format!("not fixed: {}", spelled(left)));
    }
}
