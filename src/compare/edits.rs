//! All edits between two sides, and which of them lie behind a number.
//!
//! Documents are matched by kind and id, items of a list by their id where they have one, and what is written differently
//! is an edit. A line goes back to an edit if one of its inputs is the edited field, holds it or lies inside it. An input
//! that only one side has was reached through a reference, and the edit is then that of the reference. A survey file that
//! reads otherwise is an edit of the field that names it.

use std::collections::{BTreeSet, HashMap};

use super::alike::Alike;
use super::cause::Cause;
use super::differences::{Differences, Edit};
use super::index::{Index, Route};
use super::outline::Name;
use super::side::Side;
use super::trees::Trees;
use crate::finding::Spot;
use crate::place::{DocumentId, Place, Step};

/// All edits between two sides, to trace lines back to.
pub(super) struct Edits<'f> {
    sides: [Index<'f>; 2],
    list: Vec<Edit<'f>>,
    by_name: HashMap<Name, Vec<usize>>,
}

impl<'f> Edits<'f> {
    /// Everything written differently in documents that both sides have.
    pub(super) fn between(both: [&'f Side; 2], alike: &'f Alike) -> Self {
        let sides = [0, 1].map(|side| Index::of(&both[side].files, &alike.outlines[side]));
        let mut differences = Differences { sides: &sides, list: Vec::new() };
        for before in alike.outlines[0].named() {
            let name = &before.name;
            let Some(after) = alike.outlines[1].first(name) else { continue };
            let ids = [before.id, after.id];
            let both = sides[0].text(before.id).zip(sides[1].text(after.id));
            if both.is_none_or(|(before, after)| before != after) {
                differences.documents(name, ids);
            }
            if name.0 == "hop" {
                differences.surveys(name, ids);
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
    pub(super) fn line(&self, side: usize, spot: &Spot, trees: &Trees<'_>) -> Option<(String, usize)> {
        self.sides[side].line(spot, trees)
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
    pub(super) fn behind(
        &self,
        places: [&[Place]; 2],
        hop: [Option<DocumentId>; 2],
        trees: &[Trees<'_>; 2],
    ) -> BTreeSet<usize> {
        let routes = [0, 1].map(|side| -> BTreeSet<(Name, Route<'_>)> {
            places[side].iter().filter_map(|place| self.sides[side].route(place, &trees[side])).collect()
        });
        let hops: Vec<Name> = (0..2).filter_map(|i| self.sides[i].name(hop[i]?, &trees[i])).collect();
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
            .chain(&hops)
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
