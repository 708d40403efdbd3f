//! Which hops are meant by the words of a command line: ids, patterns of ids, sites, files. One way for every command.

use std::path::{Path, PathBuf};

use globset::{Glob, GlobMatcher};

use super::Stop;
use crate::network::{ResolvedHop, Scope, Slot};
use crate::place::FileId;
use crate::text::nearest::{did_you_mean, nearest};
use crate::verdict::{Open, Read};

/// What stands before the id of a site whose hops are meant.
const SITE: &str = "site:";

/// The files of the hops that a word means, those that cannot be evaluated included.
pub(super) fn files(read: &Read, word: &str) -> Result<Vec<PathBuf>, Stop> {
    let (glob, site) = (pattern(word)?, word.strip_prefix(SITE));
    let mut found: Vec<FileId> = Vec::new();
    for library in read.libraries() {
        for (id, slot) in &library.hops.index {
            let (hop, file) = match slot {
                Slot::Typed(number) => {
                    let hop = &library.hops.documents[*number];
                    (Some(hop), hop.at.file)
                }
                Slot::Broken(document) => (None, document.file),
            };
            let is_there = match (site, hop) {
                (Some(site), Some(hop)) => [&hop.ends.a, &hop.ends.b].iter().any(|end| *end.site.0 == *site),
                (Some(_), None) => false,
                (None, _) => glob.is_match(&*id.0),
            };
            if is_there {
                found.push(file);
            }
        }
    }
    found.sort_unstable();
    found.dedup();
    let paths: Vec<PathBuf> =
        found.iter().filter_map(|file| read.files().get(*file)).map(|file| file.origin.clone()).collect();
    if paths.is_empty() {
        let known = || read.libraries().iter().flat_map(|library| library.hops.index.keys()).map(|id| &*id.0);
        let hint = nearest(word, known()).map(|guess| format!("; {}", did_you_mean(guess))).unwrap_or_default();
        let or_hop = if word.contains(['/', '\\', '.']) { "" } else { ", nor a hop of the network here" };
        let said = format!("{word}: there is no such file or folder{or_hop}{hint}");
        return Err(Stop::Unknown(said));
    }
    Ok(paths)
}

/// A word as a pattern of ids.
fn pattern(word: &str) -> Result<GlobMatcher, Stop> {
    let glob = Glob::new(word).map_err(|error| Stop::Unknown(format!("`{word}` is not a pattern: {error}")))?;
    Ok(glob.compile_matcher())
}

/// Whether a hop is meant by a word.
type IsMeant<'w> = dyn Fn(&ResolvedHop<'_>) -> bool + 'w;

/// A network, by what its hops are asked for.
pub(super) struct Hops<'r> {
    /// What was read.
    pub(super) read: &'r Read,
    /// The same, opened.
    pub(super) open: &'r Open<'r>,
}

impl Hops<'_> {
    /// The numbers of the hops that some words mean, in order of file; all hops if there are no words.
    pub(super) fn meant(&self, words: &[String]) -> Result<Vec<usize>, Stop> {
        let hops: Vec<&ResolvedHop<'_>> = self.open.hops().collect();
        if words.is_empty() {
            return Ok((0..hops.len()).collect());
        }
        let mut wanted = vec![false; hops.len()];
        for word in words {
            let is_meant = self.reading(word)?;
            let mut any = false;
            for (number, _) in hops.iter().enumerate().filter(|(_, hop)| is_meant(hop)) {
                (wanted[number], any) = (true, true);
            }
            if !any {
                return Err(self.none(word));
            }
        }
        Ok(wanted.iter().enumerate().filter(|(_, wanted)| **wanted).map(|(number, _)| number).collect())
    }

    /// How a word is to be read.
    fn reading(&self, word: &str) -> Result<Box<IsMeant<'_>>, Stop> {
        if let Some(site) = word.strip_prefix(SITE) {
            let site = site.to_owned();
            return Ok(Box::new(move |hop| hop.ends.iter().any(|end| *end.site.id.0 == *site)));
        }
        if word.contains(['*', '?', '[']) && !crate::door::exists(Path::new(word)) {
            let glob = pattern(word)?;
            return Ok(Box::new(move |hop| glob.is_match(&*hop.hop.id.0)));
        }
        let id = word.to_owned();
        let is_known = self.open.hop_ids().iter().any(|[_, hop]| *hop == id);
        if !is_known && crate::door::exists(Path::new(word)) {
            let (named, files) = (Scope::of(&[PathBuf::from(word)]), self.read.files());
            return Ok(Box::new(move |hop| files.get(hop.hop.at.file).is_some_and(|file| named.reports(&file.origin))));
        }
        Ok(Box::new(move |hop| *hop.hop.id.0 == *id))
    }

    /// Why a word means no hop there is a sheet of.
    fn none(&self, word: &str) -> Stop {
        let ids = self.open.hop_ids();
        if ids.iter().any(|[_, hop]| hop == word) {
            return Stop::Unknown(format!("hop `{word}` cannot be evaluated: `check` says why"));
        }
        if let Some(site) = word.strip_prefix(SITE) {
            return Stop::Unknown(format!("no hop that can be evaluated ends at a site `{site}`"));
        }
        let known = || ids.iter().map(|[_, hop]| hop.as_str());
        let hint = nearest(word, known()).map(|guess| format!("; {}", did_you_mean(guess))).unwrap_or_default();
        Stop::Unknown(format!("there is no hop `{word}`{hint} (ids, patterns, `{SITE}ID` and files name hops)"))
    }
}
