//! What a walk passes over: the patterns of `.gitignore`, and those of a network's `exclude`, which are written the same
//! way. The matcher is linear in the name, whatever the pattern.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use ignore::Match;
use ignore::gitignore::{Gitignore, GitignoreBuilder};

use crate::door::path::full;
use crate::door::{Store, Why, repository_of};

use super::read::{FileFault, FileFaultKind};

/// The largest `.gitignore`: thousands of lines.
const MOST_BYTES: u64 = 64 << 10;

/// Patterns, the innermost first.
#[derive(Debug, Clone, Default)]
pub struct PassedOver {
    list: Vec<Arc<Gitignore>>,
}

impl PassedOver {
    /// The patterns of the `.gitignore` files above a folder, as far as its repository goes.
    pub(super) fn above(store: &dyn Store, folder: &Path, faults: &mut Vec<FileFault>) -> Self {
        let whole = full(folder);
        let Some(root) = repository_of(&whole) else { return Self::default() };
        let mut above: Vec<&Path> = whole.ancestors().skip(1).take_while(|up| up.starts_with(&root)).collect();
        above.reverse();
        above.into_iter().fold(Self::default(), |all, up| all.with_file_of(store, up, faults))
    }

    /// The same with the `.gitignore` of a folder, which is there.
    pub(super) fn with_file_of(&self, store: &dyn Store, folder: &Path, faults: &mut Vec<FileFault>) -> Self {
        let path = folder.join(".gitignore");
        match store.read(&path, MOST_BYTES) {
            Ok(bytes) => {
                let text = String::from_utf8_lossy(&bytes);
                // A line that is no pattern matches nothing, as in git.
                self.with(patterns(folder, text.lines()).0)
            }
            Err(refused) if refused.why == Why::Missing => self.clone(),
            Err(refused) => {
                let mut fault = FileFault::refused(&path, refused);
                if fault.kind == FileFaultKind::Missing {
                    fault.kind = FileFaultKind::Unreadable;
                }
                faults.push(fault);
                self.clone()
            }
        }
    }

    /// The same with more patterns, which count before those that are there.
    #[must_use]
    pub fn with(&self, patterns: Gitignore) -> Self {
        let mut list = vec![Arc::new(patterns)];
        list.extend(self.list.iter().cloned());
        Self { list }
    }

    /// Whether a path is passed over.
    #[must_use]
    pub fn has(&self, path: &Path, is_folder: bool) -> bool {
        let whole = full(path);
        let verdicts = self.list.iter().map(|patterns| patterns.matched(&whole, is_folder));
        verdicts
            .map(|verdict| verdict.is_ignore().then_some(true).or_else(|| verdict.is_whitelist().then_some(false)))
            .find_map(|verdict| verdict)
            .unwrap_or(false)
    }
}

/// Patterns as `.gitignore` has them, counted from a folder; what is no pattern, with its number.
pub fn patterns<'p>(folder: &Path, lines: impl Iterator<Item = &'p str>) -> (Gitignore, Vec<usize>) {
    let mut builder = GitignoreBuilder::new(full(folder));
    let wrong =
        lines.enumerate().filter_map(|(number, line)| builder.add_line(None, line).err().map(|_| number)).collect();
    let built = builder.build().unwrap_or_else(|_| Gitignore::empty());
    (built, wrong)
}

/// Whether a path or a folder on the way to it, up to a root, is passed over by patterns.
#[must_use]
pub fn passes_over(patterns: &Gitignore, root: &Path, file: &Path) -> bool {
    let (root, whole): (PathBuf, PathBuf) = (full(root), full(file));
    whole.starts_with(&root) && matches!(patterns.matched_path_or_any_parents(&whole, false), Match::Ignore(_))
}
