//! Where things are written, in words.

use std::borrow::Cow;
use std::collections::HashSet;

use crate::finding::Spot;
use crate::network::{Trees, mark};
use crate::place::route::spelled;
use crate::place::{FileId, Place};

/// Where things are written.
#[derive(Debug)]
pub struct Places<'f> {
    trees: &'f Trees<'f>,
    inside: Option<Inside>,
}

/// Files of a network by their paths from its folder.
#[derive(Debug)]
struct Inside {
    network: FileId,
    files: HashSet<FileId>,
}

impl<'f> Places<'f> {
    /// By the paths that were read.
    #[must_use]
    pub const fn of(trees: &'f Trees<'f>) -> Self {
        Self { trees, inside: None }
    }

    /// By the paths from the folder of a network, in some of its files; in others nothing is found.
    #[cfg_attr(not(feature = "pages"), allow(dead_code, reason = "without the press nobody sets its pages"))]
    pub(crate) fn inside(trees: &'f Trees<'f>, network: FileId, files: impl IntoIterator<Item = FileId>) -> Self {
        Self { trees, inside: Some(Inside { network, files: files.into_iter().collect() }) }
    }

    /// What a file is called.
    pub(crate) fn file(&self, number: FileId) -> Option<Cow<'f, str>> {
        let files = self.trees.files();
        let file = files.get(number)?;
        match &self.inside {
            None => Some(Cow::Borrowed(&file.path)),
            Some(inside) if inside.files.contains(&number) => {
                Some(Cow::Owned(mark::inside(files, inside.network, number, file)))
            }
            Some(_) => None,
        }
    }

    /// `hops/ridge.yaml:12 ends.a.height`; with what gives it where the hop does not write it itself:
    /// `network.yaml:41 ends.a.radio by template …`.
    pub(super) fn written(&self, place: &Place) -> String {
        let taken = self.trees.files().taken(place);
        let elsewhere = taken.as_ref().filter(|(taken, _)| taken.from != place.document);
        let by = elsewhere.map_or_else(String::new, |(taken, _)| format!(" by {}", taken.giver()));
        let route = match &taken {
            Some((one, steps)) if one.from == place.document => spelled(steps.iter().copied()),
            _ => place.route(),
        };
        match self.line(&Spot::Field(*place)) {
            Some((file, line)) => format!("{file}:{line} {route}{by}"),
            None => format!("{route}{by}"),
        }
    }

    /// The file and the line of a spot.
    pub(crate) fn line(&self, spot: &Spot) -> Option<(Cow<'f, str>, usize)> {
        let name = self.file(self.trees.files().shown_in(spot)?)?;
        let (_, line) = self.trees.line(spot)?;
        Some((name, line))
    }
}
