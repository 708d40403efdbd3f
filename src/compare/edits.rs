//! All edits between two sides, and which of them lie behind a number.
//!
//! Documents are matched by kind and id, items of a list by their id where they have one, and what is written differently
//! is an edit. A line goes back to an edit if one of its inputs is the edited field, holds it or lies inside it. An input
//! that only one side has was reached through a reference, and the edit is then that of the reference. A survey file that
//! reads otherwise is an edit of the field that names it.

use std::collections::{BTreeSet, HashMap};

use super::cause::Cause;
use super::differences::{Differences, Edit};
use super::index::{Index, Name, Route};
use crate::finding::Spot;
use crate::network::Files;
use crate::place::{DocumentId, Place, Step};

/// All edits between two sides, to trace lines back to.
pub(super) struct Edits<'f> {
    sides: [Index<'f>; 2],
    list: Vec<Edit<'f>>,
    by_name: HashMap<Name, Vec<usize>>,
}

impl<'f> Edits<'f> {
    /// Everything written differently in documents that both sides have.
    pub(super) fn between(old: &'f Files, new: &'f Files) -> Self {
        let sides = [Index::of(old), Index::of(new)];
        let mut differences = Differences { sides: &sides, list: Vec::new() };
        for (name, before) in &sides[0].at {
            let Some(after) = sides[1].at.get(name) else { continue };
            let both = sides[0].text(*before).zip(sides[1].text(*after));
            if both.is_none_or(|(before, after)| before != after) {
                differences.documents(name, [*before, *after]);
            }
            if name.0 == "hop" {
                differences.surveys(name, [*before, *after]);
            }
        }
        let mut list = differences.list;
        let order = |edit: &Edit<'_>| (edit.cause.path.clone(), edit.cause.line, edit.cause.route.clone());
        list.sort_by_cached_key(order);
        let mut by_name: HashMap<Name, Vec<usize>> = HashMap::new();
        for (number, edit) in list.iter().enumerate() {
            by_name.entry(edit.name.clone()).or_default().push(number);
        }
        Self { sides, list, by_name }
    }

    pub(super) fn into_causes(self) -> Vec<Cause> {
        self.list.into_iter().map(|edit| edit.cause).collect()
    }

    /// Path and line of a spot of the old side, 0, or the new one, 1.
    pub(super) fn line(&self, side: usize, spot: &Spot) -> Option<(String, usize)> {
        let index = &self.sides[side];
        let found = index.files.locate(spot)?;
        index.place(found.file, found.span.start)
    }

    /// Edits of which rules are judged, and how.
    pub(super) fn of_severities(&self) -> BTreeSet<usize> {
        let settings = |edit: &Edit<'_>| {
            edit.name.0 == "network" && matches!(edit.route.first(), Some(Step::Key("rules" | "rules_by_path")))
        };
        (0..).zip(&self.list).filter(|(_, edit)| settings(edit)).map(|(number, _)| number).collect()
    }

    pub(super) fn cause(&self, number: usize) -> &Cause {
        &self.list[number].cause
    }

    /// The edits behind something that goes back to these places of each side, in a hop with these documents.
    pub(super) fn behind(&self, places: [&[Place]; 2], hop: [Option<DocumentId>; 2]) -> BTreeSet<usize> {
        let routes = [0, 1].map(|side| -> BTreeSet<(Name, Route<'_>)> {
            places[side].iter().filter_map(|place| self.sides[side].route(place)).collect()
        });
        let mut found = BTreeSet::new();
        for (name, route) in routes.iter().flatten() {
            for &number in self.by_name.get(name).into_iter().flatten() {
                let edited = &self.list[number].route;
                if edited.starts_with(route) || route.starts_with(edited) {
                    found.insert(number);
                }
            }
        }
        // What is reached on one side only was reached through something that names it.
        let near: BTreeSet<&Name> = routes
            .iter()
            .flatten()
            .map(|(name, _)| name)
            .chain((0..2).filter_map(|i| self.sides[i].names.get(&hop[i]?)))
            .collect();
        let close: Vec<usize> = near.iter().filter_map(|name| self.by_name.get(*name)).flatten().copied().collect();
        for (side, other) in [(0, 1), (1, 0)] {
            let names: BTreeSet<&str> =
                routes[side].difference(&routes[other]).flat_map(|(name, route)| names_in(name, route)).collect();
            for &number in &close {
                if names.iter().any(|name| self.list[number].words[side].contains(*name)) {
                    found.insert(number);
                }
            }
        }
        found
    }
}

/// What a reference may call a document, or an item of a list in it.
fn names_in<'r>(name: &'r Name, route: &Route<'r>) -> impl Iterator<Item = &'r str> {
    let items = route.iter().filter_map(|step| match step {
        Step::Named(name) => Some(*name),
        Step::Key(_) | Step::Index(_) => None,
    });
    std::iter::once(name.1.as_str()).chain(items)
}
