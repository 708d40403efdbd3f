//! Trees made again for what is printed, and let go when others are asked for.
//!
//! What is printed of a thousand hops names places in thousands of files, each of them for a hop or two, and in a few
//! libraries for all. So the trees of the files most lately asked about are kept, however many files there are.

use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use super::files::Files;
use crate::finding::Spot;
use crate::place::FileId;
use crate::source::{LineTable, Parsed, parse};

/// Bytes of text whose trees are always kept.
const LEAST: usize = 64 << 10;

/// The most bytes of text whose trees are kept, but for one tree.
const MOST: usize = 8 << 20;

/// How many files of the size of the largest a hop may be made of before their trees are made again for every hop.
const OF_A_HOP: usize = 8;

/// The trees of the files most lately asked about.
#[derive(Debug)]
pub struct Trees<'f> {
    files: &'f Files,
    kept: Mutex<Kept>,
    room: usize,
}

#[derive(Debug, Default)]
struct Kept {
    /// The newest last.
    trees: Vec<(FileId, Arc<Tree>)>,
    /// Bytes of text they were made of.
    size: usize,
}

/// What places of a file are looked up in.
#[derive(Debug)]
struct Tree {
    parsed: Parsed,
    lines: LineTable,
    /// Bytes of text it was made of.
    size: usize,
}

impl<'f> Trees<'f> {
    /// Trees of these files, none made yet.
    #[must_use]
    pub fn of(files: &'f Files) -> Self {
        let largest = files.list.iter().map(|file| file.text.len()).max().unwrap_or_default();
        let room = largest.saturating_mul(OF_A_HOP).clamp(LEAST, MOST);
        Self { files, kept: Mutex::default(), room }
    }

    /// The files.
    #[must_use]
    pub const fn files(&self) -> &'f Files {
        self.files
    }

    /// The file and the line, from 1, of a spot; `None` for a path that has no text.
    #[must_use]
    pub fn line(&self, spot: &Spot) -> Option<(FileId, usize)> {
        let file = self.files.shown_in(spot)?;
        let source = self.files.get(file)?;
        let tree = self.tree(file, &source.text);
        let found = self.files.locate_in(spot, &tree.parsed)?;
        Some((file, tree.lines.position(&source.text, found.span.start).line))
    }

    /// The tree of a file, kept or made.
    fn tree(&self, file: FileId, text: &str) -> Arc<Tree> {
        if let Some(tree) = self.kept().newest(file) {
            return tree;
        }
        // Made while nobody waits, even if another thread makes the same.
        let tree = Arc::new(Tree { parsed: parse(text), lines: LineTable::new(text), size: text.len() });
        self.kept().keep(file, &tree, self.room);
        tree
    }

    fn kept(&self) -> MutexGuard<'_, Kept> {
        self.kept.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Kept {
    /// The tree of a file, which is from now on the newest.
    fn newest(&mut self, file: FileId) -> Option<Arc<Tree>> {
        let at = self.trees.iter().rposition(|(known, _)| *known == file)?;
        self.trees[at..].rotate_left(1);
        self.trees.last().map(|(_, tree)| Arc::clone(tree))
    }

    /// Keeps a tree as the newest and lets go of the oldest while there is no room for all.
    fn keep(&mut self, file: FileId, tree: &Arc<Tree>, room: usize) {
        if self.newest(file).is_some() {
            return;
        }
        self.trees.push((file, Arc::clone(tree)));
        self.size += tree.size;
        let mut old = 0;
        while self.size > room && old + 1 < self.trees.len() {
            self.size -= self.trees[old].1.size;
            old += 1;
        }
        self.trees.drain(..old);
    }
}

#[cfg(test)]
mod tests {
    use super::{LEAST, Trees};
    use crate::finding::Spot;
    use crate::network::{Files, SourceFile};
    use crate::place::{DocumentId, FileId, Place};

    #[test]
    fn many_files_are_looked_up_in_and_few_trees_are_kept() {
        let text = format!("a: 1\n# {}\nb: 2\n", "x".repeat(LEAST / 16));
        let one = |number| SourceFile::new(format!("{number}.yaml"), format!("{number}.yaml").into(), text.clone());
        let files = Files { list: (0..100).map(one).collect(), ..Files::default() };
        let trees = Trees::of(&files);
        let spot = |file| Spot::Field(Place::document(DocumentId { file: FileId(file), number: 0 }).below(&"x.b", &[]));
        for file in (0..100).chain([3]) {
            // A library is asked for again and again, and stays.
            assert_eq!(trees.line(&spot(0)), trees.line(&spot(file)).map(|(_, line)| (FileId(0), line)));
        }
        let kept = trees.kept();
        assert!(kept.trees.len() < 20 && kept.size <= trees.room, "{} trees, {} bytes", kept.trees.len(), kept.size);
        let sum: usize = kept.trees.iter().map(|(_, tree)| tree.size).sum();
        assert_eq!(kept.size, sum);
        assert!(kept.trees.iter().any(|(file, _)| *file == FileId(0)), "the library is kept");
    }
}
