//! Finding what hops may take in, before any of them is typed.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use rayon::prelude::*;

use super::super::exclude::{opens_network, says_network};
use super::super::files::Files;
use super::super::shared::ReadLibrary;
use super::{AllGivers, Giver};
use crate::place::{DocumentId, FileId};
use crate::shape;
use crate::source::{Document, Parsed, TreeFaultKind, parse};
use crate::spec::Kind;

/// The words without which a text has nothing for others to take in.
const WORDS: [&str; 2] = ["defaults", "template"];

/// Gathers it out of the files of the networks, the first of the list, and of the libraries they share.
pub(in super::super) fn gather(files: &Files, folders: &[PathBuf], shared: &[ReadLibrary]) -> AllGivers {
    let mut all = AllGivers::default();
    let giving =
        |number: &FileId| files.get(*number).is_some_and(|file| WORDS.iter().any(|word| file.text.contains(word)));
    let own: Vec<FileId> = (0..).map(FileId).take(folders.len()).filter(giving).collect();
    let of_libraries = shared.iter().flat_map(|library| library.texts.iter().map(move |(_, file)| (library, *file)));
    let foreign: Vec<(&ReadLibrary, FileId)> = of_libraries.filter(|(_, file)| giving(file)).collect();
    if own.is_empty() && foreign.is_empty() {
        return all;
    }
    for (folder, file) in folders.iter().zip(&files.list) {
        if file.text.contains(Kind::Network.word()) && opens_network(&file.text) {
            all.networks.entry(folder.clone()).or_default();
        }
    }
    let read = |number: FileId| Some((number, Arc::new(parse(&files.get(number)?.text))));
    let parsed: Vec<(FileId, Arc<Parsed>)> = own.par_iter().filter_map(|number| read(*number)).collect();
    for (number, parsed) in parsed {
        let folder = &folders[number.0 as usize];
        let Some(root) = folder.ancestors().find(|up| all.networks.contains_key(*up)).map(Path::to_path_buf) else {
            continue;
        };
        let broken = parsed.faults.iter().any(|fault| fault.kind.ends_document());
        let text = files.get(number).map_or("", |file| file.text.as_str());
        let givers = all.networks.entry(root).or_default();
        givers.unreadable |= broken && text.contains(WORDS[0]) && text.lines().any(says_network);
        givers.add(number, &parsed, &text.into(), false);
    }
    for (library, number) in foreign {
        let (Some(givers), Some((_, parsed))) = (all.networks.get_mut(&library.home), read(number)) else { continue };
        let text = files.get(number).map_or("", |file| file.text.as_str());
        givers.add(number, &parsed, &text.into(), true);
    }
    all
}

impl super::Givers {
    /// Adds the documents of a file that give something. Of two of a name the first counts.
    fn add(&mut self, file: FileId, parsed: &Arc<Parsed>, text: &Arc<str>, shared: bool) {
        for (number, tree) in parsed.documents.iter().enumerate() {
            let word = |key| tree.get(tree.root(), key).and_then(|(_, value)| tree.text(value));
            let (Some(kind), Some(id)) = (word("kind").and_then(Kind::from_word), word("id")) else { continue };
            let next = self.list.len();
            match kind {
                Kind::Network if self.network.is_none() && !shared && has_defaults(tree) => self.network = Some(next),
                Kind::Template if !self.templates.contains_key(id) => {
                    self.templates.insert(id.to_owned(), next);
                }
                Kind::Site if !self.sites.contains_key(id) && has_defaults(tree) => {
                    self.sites.insert(id.to_owned(), next);
                }
                _ => continue,
            }
            let span = &tree.node(tree.root()).span;
            let doubled = parsed.faults.iter().filter(|fault| fault.kind == TreeFaultKind::DuplicateKey);
            let doubled = doubled.filter(|fault| span.contains(&fault.span.start));
            let number = u16::try_from(number).unwrap_or(u16::MAX);
            self.list.push(Giver { kind, id: id.into(), number, parsed: Arc::clone(parsed) });
            self.texts.push(shape::Giver {
                document: DocumentId { file, number },
                text: Arc::clone(text),
                doubtful: doubled.filter_map(|fault| fault.other.clone()).collect(),
            });
        }
    }
}

/// Whether a document, or one of its supports, has defaults.
fn has_defaults(tree: &Document) -> bool {
    let supports = tree.get(tree.root(), "supports").map(|(_, list)| list);
    let mut holders = supports.into_iter().flat_map(|list| tree.items(list)).chain([tree.root()]);
    holders.any(|holder| tree.get(holder, "defaults").is_some())
}
