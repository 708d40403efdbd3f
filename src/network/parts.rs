//! Standard parts on the shelves of the networks that name them.

use std::collections::{BTreeMap, HashSet};

use super::elsewhere::Origin;
use super::files::{Files, SourceFile};
use super::shelving::Shelving;
use super::typing::type_file;
use crate::place::FileId;
use crate::spec::Id;
use crate::standard::{self, Part};

/// Puts on the shelves of every network the standard parts that its files name.
pub(super) fn shelve_standard(shelving: &mut Shelving, files: &mut Files) {
    let mut wanted: BTreeMap<&str, (&Part, HashSet<usize>)> = BTreeMap::new();
    for file in &files.list {
        let mut named = standard::named_in(&file.text).peekable();
        if named.peek().is_none() {
            continue;
        }
        let Some(network) = file.origin.parent().and_then(|folder| shelving.around(folder)) else { continue };
        for part in named {
            wanted.entry(part.id).or_insert_with(|| (part, HashSet::new())).1.insert(network);
        }
    }
    for (part, networks) in wanted.into_values() {
        let number = FileId(u32::try_from(files.list.len()).unwrap_or(u32::MAX));
        files.list.push(SourceFile::standard(part));
        for network in networks {
            let mut typed = type_file(number, part.text);
            shelving.findings.append(&mut typed.findings);
            for mut entry in typed.entries {
                entry.rename(Id(part.name()));
                shelving.put_from(network, entry, Origin::Standard);
            }
        }
    }
}
