//! What to load and what to report on.
//!
//! A person may name a hop's file or a folder of sites. Rules need the whole network all the same, so what is loaded is
//! the folder of the network that encloses a path, and the path itself limits only what is reported. A folder that is no
//! network and lies in none is not searched for documents: it may be anything.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::brought::{Brought, Inputs};
use super::enclosing::{below, enclosing_network, texts_right_in};
use super::requires::{asks_for, unmet};
use crate::door::path::{full, shown};
use crate::door::{Folder, Overlay, Store, is_folder};
use crate::spec::Date;

/// What to load and what to report on.
#[derive(Debug, Clone)]
pub struct Scope {
    roots: Vec<Root>,
    /// Folders that were named and belong to no network.
    strays: Vec<Stray>,
    /// Paths the findings must touch, in full.
    report: Vec<PathBuf>,
    /// The day waivers are evaluated on; that of the clock if none is given.
    pub today: Option<Date>,
    /// What lies outside and was named on the command line.
    pub brought: Brought,
    /// The state whose gate counts, if that is another.
    gate: Option<Arc<Scope>>,
    /// Whether nobody reads the help of what is found.
    unhelped: bool,
}

/// A folder or file to read, none inside another, and the state it is read from.
#[derive(Debug, Clone)]
pub(super) struct Root {
    pub(super) path: PathBuf,
    pub(super) store: Arc<dyn Store>,
}

/// A folder without a network.
#[derive(Debug, Clone)]
pub(super) struct Stray {
    pub(super) path: PathBuf,
    /// Whether it holds YAML files at all.
    pub(super) yaml: bool,
    /// Networks below it.
    pub(super) networks: Vec<PathBuf>,
}

impl Scope {
    /// The scope of the paths a person gave.
    #[must_use]
    pub fn of(paths: &[PathBuf]) -> Self {
        let (mut roots, mut strays) = (Vec::new(), Vec::new());
        for path in paths {
            match enclosing_network(path) {
                Some((path, store)) => roots.push(Root { path, store }),
                None if is_folder(path) => {
                    let (yaml, networks) = below(path);
                    strays.push(Stray { path: path.clone(), yaml, networks });
                }
                None => roots.push(Root { path: path.clone(), store: Arc::new(Folder::around(path)) }),
            }
        }
        roots.sort_by(|one: &Root, other| one.path.cmp(&other.path));
        roots.dedup_by(|one, other| one.path == other.path);
        let all: Vec<PathBuf> = roots.iter().map(|root| full(&root.path)).collect();
        roots.retain(|root| {
            let own = full(&root.path);
            !all.iter().any(|other| *other != own && own.starts_with(other))
        });
        let report = paths.iter().map(|path| full(path)).collect();
        Self { roots, strays, report, today: None, brought: Brought::default(), gate: None, unhelped: false }
    }

    /// A folder as it is in some other state.
    #[must_use]
    pub fn in_store(folder: &Path, store: Arc<dyn Store>) -> Self {
        let (path, report) = (folder.to_path_buf(), vec![full(folder)]);
        let roots = vec![Root { path, store }];
        Self {
            roots,
            strays: Vec::new(),
            report,
            today: None,
            brought: Brought::default(),
            gate: None,
            unhelped: false,
        }
    }

    /// The same with texts in the place of files, which need not be there.
    #[must_use]
    pub fn with_texts(mut self, texts: &[(PathBuf, Arc<str>)]) -> Self {
        for root in &mut self.roots {
            root.store = Arc::new(Overlay::over(Arc::clone(&root.store), texts.iter().cloned()));
        }
        self
    }

    /// The same with these texts as the only documents there are: what is tried again and again is read without looking at
    /// files that have no say in it.
    #[must_use]
    pub fn with_only(mut self, texts: &[(PathBuf, Arc<str>)]) -> Self {
        for root in &mut self.roots {
            root.store = Arc::new(Overlay::alone(Arc::clone(&root.store), texts.iter().cloned()));
        }
        self
    }

    /// The same on a day of one's own choosing.
    #[must_use]
    pub fn on(self, today: Option<Date>) -> Self {
        Self { today, ..self }
    }

    /// The same with data that lies outside.
    #[must_use]
    pub fn with_brought(self, brought: Brought) -> Self {
        Self { brought, ..self }
    }

    /// The same for somebody who counts what is found and reads no help: what would help is not looked for.
    #[must_use]
    pub fn unhelped(self) -> Self {
        Self { unhelped: true, ..self }
    }

    /// Whether the help of what is found is read.
    #[must_use]
    pub const fn is_helped(&self) -> bool {
        !self.unhelped
    }

    /// The same judged by what another state asks for: its rules, limits and waivers.
    #[must_use]
    pub fn judged_by(self, gate: Self) -> Self {
        Self { gate: Some(Arc::new(gate)), ..self }
    }

    /// Both together, where each folder is one network's.
    #[must_use]
    pub fn and(mut self, other: Self) -> Self {
        self.roots.extend(other.roots);
        self.strays.extend(other.strays);
        self.report.extend(other.report);
        self
    }

    /// The folders that are loaded.
    #[must_use]
    pub fn folders(&self) -> Vec<PathBuf> {
        self.roots.iter().map(|root| root.path.clone()).collect()
    }

    /// Whether a file lies under one of the reported paths.
    #[must_use]
    pub fn reports(&self, file: &Path) -> bool {
        let file = full(file);
        self.report.iter().any(|path| file.starts_with(path))
    }

    /// Why a state cannot be judged as a whole.
    #[must_use]
    pub fn failure(&self) -> Option<String> {
        let own = self.roots.iter().find_map(|root| root.store.failure());
        own.or_else(|| self.gate.as_ref().and_then(|gate| gate.failure()))
    }

    /// What is to be said first where a network asks for a newer program than this: all else that would be said of it may be
    /// wrong. It is read however broken the rest is.
    #[must_use]
    pub fn too_old(&self) -> Option<String> {
        let here = std::env::current_dir().ok();
        let asked = self.roots.iter().find_map(|root| {
            let mut texts = texts_right_in(&*root.store, &root.path);
            texts.find_map(|source| Some(asks_for(&shown(&source.path, here.as_deref()), unmet(&source.text)?)))
        });
        asked.or_else(|| self.gate.as_ref().and_then(|gate| gate.too_old()))
    }

    pub(super) fn gate(&self) -> Option<&Self> {
        self.gate.as_deref()
    }

    pub(super) fn roots(&self) -> &[Root] {
        &self.roots
    }

    pub(super) fn strays(&self) -> &[Stray] {
        &self.strays
    }

    /// What the network in a folder reads beside its documents.
    #[must_use]
    pub fn inputs<'s>(&'s self, folder: &'s Path) -> Inputs<'s> {
        let holds = |root: &&Root| folder.starts_with(&root.path) || root.path.parent() == Some(folder);
        let store = self.roots.iter().find(holds).or(self.roots.first()).map(|root| &root.store);
        Inputs { folder, store, brought: &self.brought }
    }
}
