//! Texts in the place of files: what somebody types, or a fix that is being tried.

use std::collections::BTreeMap;
use std::ffi::OsString;
use std::io::Cursor;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::path::full;
use super::{Found, Named, Refused, Store, Stream, What};

/// A state in which some files have other texts, or are there though nobody has saved them.
#[derive(Debug)]
pub struct Overlay {
    under: Arc<dyn Store>,
    /// By full path.
    texts: BTreeMap<PathBuf, Arc<str>>,
    /// Whether folders list nothing but the texts.
    alone: bool,
}

impl Overlay {
    /// Lays texts over a state.
    #[must_use]
    pub fn over(under: Arc<dyn Store>, texts: impl IntoIterator<Item = (PathBuf, Arc<str>)>) -> Self {
        Self { under, texts: texts.into_iter().map(|(path, text)| (full(&path), text)).collect(), alone: false }
    }

    /// A state whose folders list these texts and nothing else. A file that is asked for by its name, such as a profile or a
    /// tile, is still read from the state below.
    #[must_use]
    pub fn alone(under: Arc<dyn Store>, texts: impl IntoIterator<Item = (PathBuf, Arc<str>)>) -> Self {
        Self { alone: true, ..Self::over(under, texts) }
    }

    /// The names right in a folder that texts bring: files, and folders that files lie in.
    fn brought<'p>(&'p self, folder: &'p Path) -> impl Iterator<Item = (OsString, What)> + 'p {
        let from = self.texts.range(folder.to_path_buf()..);
        from.map_while(move |(path, _)| path.strip_prefix(folder).ok()).filter_map(|below| {
            let mut parts = below.iter();
            let name = parts.next()?.to_owned();
            Some((name, if parts.next().is_some() { What::Folder } else { What::File }))
        })
    }
}

impl Store for Overlay {
    fn look(&self, path: &Path) -> Result<Found, Refused> {
        let whole = full(path);
        if let Some(text) = self.texts.get(&whole) {
            return Ok(Found { what: What::File, bytes: text.len() as u64, real: whole });
        }
        self.under.look(path).or_else(|refused| {
            let folder = self.brought(&whole).next().is_some();
            if folder { Ok(Found { what: What::Folder, bytes: 0, real: whole }) } else { Err(refused) }
        })
    }

    fn list(&self, folder: &Path) -> Result<Vec<Named>, Refused> {
        let whole = full(folder);
        let brought: Vec<(OsString, What)> = self.brought(&whole).collect();
        let mut names = match self.under.list(folder) {
            _ if self.alone => Vec::new(),
            Err(_) if !brought.is_empty() => Vec::new(),
            names => names?,
        };
        for (name, what) in brought {
            let real = whole.join(&name);
            match names.binary_search_by(|named| named.name.cmp(&name)) {
                Ok(at) if what == What::File => names[at].what = Ok((what, real)),
                Ok(_) => {}
                Err(at) => names.insert(at, Named { name, link: false, what: Ok((what, real)) }),
            }
        }
        Ok(names)
    }

    fn open(&self, path: &Path, most: u64) -> Result<Box<dyn Stream>, Refused> {
        match self.texts.get(&full(path)) {
            Some(text) if text.len() as u64 > most => Err(Refused::too_large(most)),
            Some(text) => Ok(Box::new(Cursor::new(text.as_bytes().to_vec()))),
            None => self.under.open(path, most),
        }
    }

    fn expect(&self, paths: &[PathBuf], most: u64) {
        self.under.expect(paths, most);
    }

    fn is_tracked(&self) -> bool {
        self.under.is_tracked()
    }

    fn failure(&self) -> Option<String> {
        self.under.failure()
    }
}
