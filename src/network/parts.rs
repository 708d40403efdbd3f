//! Standard parts on the shelves of the networks that name them.

use std::collections::{BTreeMap, HashSet};

use super::elsewhere::Origin;
use super::files::{Files, SourceFile};
use super::inherit::Givers;
use super::shelving::Shelving;
use super::typing::type_file;
use crate::place::FileId;
use crate::spec::Id;
use crate::standard::{self, Part};

/// Puts on the shelves of every network the standard parts that its files name.
pub(super) fn shelve_standard(shelving: &mut Shelving, files: &mut Files, shared: &[(FileId, usize)]) {
    let mut wanted: BTreeMap<&str, (&Part, HashSet<usize>)> = BTreeMap::new();
    for (number, file) in (0..).map(FileId).zip(&files.list) {
        let mut named = standard::named_in(&file.text).peekable();
        if named.peek().is_none() {
            continue;
        }
        let own = file.origin.parent().and_then(|folder| shelving.around(folder));
        let users = shared.iter().filter(|(file, _)| *file == number).map(|(_, network)| *network);
        let networks: Vec<usize> = own.into_iter().chain(users).collect();
        for part in named {
            wanted.entry(part.id).or_insert_with(|| (part, HashSet::new())).1.extend(&networks);
        }
    }
    for (part, networks) in wanted.into_values().filter(|(_, networks)| !networks.is_empty()) {
        let number = FileId(u32::try_from(files.list.len()).unwrap_or(u32::MAX));
        files.list.push(SourceFile::standard(part));
        for network in networks {
            let mut typed = type_file(number, part.text, &Givers::default());
            typed.note_in(files);
            shelving.findings.append(&mut typed.findings);
            for mut entry in typed.entries {
                entry.rename(Id(part.name()));
                shelving.put_from(network, entry, Origin::Standard);
            }
        }
    }
}
