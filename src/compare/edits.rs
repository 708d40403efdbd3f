//! All edits between two sides, and which of them lie behind a number.
//!
//! Documents are matched by kind and id, items of a list by their id where they have one, and what is written differently
//! is an edit. A line goes back to an edit if one of its inputs is the edited field, holds it or lies inside it. An input
//! that only one side has was reached through a reference, and the edit is then that of the reference. A survey file that
//! reads otherwise is an edit of the field that names it.

use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet};

use super::alike::Alike;
use super::cause::Cause;
use super::differences::{Differences, Edit};
use super::hop_trees::HopTrees;
use super::index::{Index, Route};
use super::outline::Name;
use super::side::Side;
use crate::finding::Spot;
use crate::place::{DocumentId, Place, Step};

/// All edits between two sides, to trace lines back to.
pub(super) struct Edits<'f> {
    sides: [Index<'f>; 2],
    list: Vec<Edit<'f>>,
    by_name: HashMap<Name, Vec<usize>>,
    alike: &'f Alike,
}

impl<'f> Edits<'f> {
    /// Everything written differently in documents that both sides have, and the hops that only one has.
    pub(super) fn between(both: [&'f Side; 2], alike: &'f Alike) -> Self {
        let sides = [0, 1].map(|side| Index::of(both[side].files(), &alike.outlines[side]));
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
        // Whoever shares a site with a hop that is new or gone, or hears it, may change by it; a neighbour is heard too.
        for (side, other) in [(0, 1), (1, 0)] {
            let hops = alike.outlines[side].named().filter(|outline| matches!(&*outline.name.0, "hop" | "neighbour"));
            for outline in hops.filter(|outline| alike.outlines[other].first(&outline.name).is_none()) {
                differences.alone(side, &outline.name, outline.id);
            }
        }
        let mut list = differences.list;
        let order = |edit: &Edit<'_>| (edit.cause.path.clone(), edit.cause.line, edit.cause.route.clone());
        list.sort_by_cached_key(order);
        let mut by_name: HashMap<Name, Vec<usize>> = HashMap::new();
        for (number, edit) in list.iter().enumerate() {
            by_name.entry(edit.name.clone()).or_default().push(number);
        }
        Self { sides, list, by_name, alike }
    }

    pub(super) fn into_causes(self) -> Vec<Cause> {
        self.list.into_iter().map(|edit| edit.cause).collect()
    }

    /// Path and line of a spot of the old side, 0, or the new one, 1.
    pub(super) fn line(&self, side: usize, spot: &Spot, trees: &HopTrees<'_>) -> Option<(String, usize)> {
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
    pub(super) fn behind<'t>(
        &self,
        places: [&[Place]; 2],
        hop: [Option<DocumentId>; 2],
        trees: &'t [HopTrees<'_>; 2],
        followed: &mut Followed<'t>,
    ) -> BTreeSet<usize> {
        if self.list.is_empty() {
            return BTreeSet::new();
        }
        let places = self.that_matter(places);
        let routes = [0, 1].map(|side| -> BTreeSet<usize> {
            places[side].iter().filter_map(|place| self.follow(side, place, trees, followed)).collect()
        });
        let mut found: BTreeSet<usize> =
            routes.iter().flatten().flat_map(|route| &followed.met[*route].edits).copied().collect();
        // What is reached on one side only was reached through something that names it.
        for (side, other) in [(0, 1), (1, 0)] {
            let alone = routes[side].difference(&routes[other]);
            let names: BTreeSet<&str> =
                alone.flat_map(|route| &followed.met[*route].names).map(String::as_str).collect();
            if names.is_empty() {
                continue;
            }
            let own = (0..2).filter_map(|side| Some((side, hop[side]?)));
            // A template may be named by what the hop takes in.
            let own = own.flat_map(|(side, hop)| {
                let givers = self.sides[side].files.givers(hop);
                givers.into_iter().chain([hop]).map(move |document| (side, document))
            });
            let hops = own.filter_map(|(side, document)| self.sides[side].name(document, &trees[side]));
            let near = routes.iter().flatten().map(|route| followed.met[*route].document.clone());
            for name in near.chain(hops).collect::<BTreeSet<Name>>() {
                let close = self.by_name.get(&name).into_iter().flatten();
                found.extend(
                    close.filter(|number| names.iter().any(|name| self.list[**number].words[side].contains(*name))),
                );
            }
        }
        found
    }

    /// The places that are to be followed. Files in which nothing is edited have none, if both sides go back to the same
    /// places in them: no edit meets these, and nothing leads to them on one side only.
    fn that_matter(&self, places: [&[Place]; 2]) -> [Vec<Place>; 2] {
        let is_plain = |side: usize, place: &Place| {
            // What is taken in may come from elsewhere on the other side, though the hop reads the same.
            let of_side = &self.sides[side];
            !of_side.outlines.has(place.document.file) && of_side.files.taken(place).is_none()
        };
        let plain = |side: usize| places[side].iter().filter(move |place| is_plain(side, place));
        let before: Option<HashSet<Place>> = plain(0).map(|place| self.alike.carried(*place)).collect();
        let after: HashSet<Place> = plain(1).copied().collect();
        let same = before.is_some_and(|before| before == after);
        [0, 1].map(|side| places[side].iter().filter(|place| !(same && is_plain(side, place))).copied().collect())
    }

    /// The number of the route of a place, which is followed once.
    fn follow<'t>(
        &self,
        side: usize,
        place: &Place,
        trees: &'t [HopTrees<'_>; 2],
        followed: &mut Followed<'t>,
    ) -> Option<usize> {
        if let Some(known) = followed.places[side].get(place) {
            return *known;
        }
        let route = self.sides[side].route(place, &trees[side]);
        let number = route.map(|route| {
            let next = followed.met.len();
            *followed.known.entry(route).or_insert_with_key(|route| {
                followed.met.push(self.meet(route));
                next
            })
        });
        followed.places[side].insert(*place, number);
        number
    }

    fn meet(&self, (name, route): &(Name, Route<'_>)) -> Met {
        let near = self.by_name.get(name).into_iter().flatten().copied();
        let edits = near.filter(|number| {
            let edited = &self.list[*number].route;
            edited.starts_with(route) || route.starts_with(edited)
        });
        Met {
            edits: edits.collect(),
            names: names_in(name, route).map(str::to_owned).collect(),
            document: name.clone(),
        }
    }
}

/// The places of one hop on both sides by where they lead: many lines go back to the same.
#[derive(Default)]
pub(super) struct Followed<'t> {
    places: [HashMap<Place, Option<usize>>; 2],
    known: BTreeMap<(Name, Route<'t>), usize>,
    met: Vec<Met>,
}

/// What is to be known of a route.
struct Met {
    /// The edits that meet it.
    edits: Vec<usize>,
    /// What a reference may call what it leads to.
    names: Vec<String>,
    /// The document it leads into.
    document: Name,
}

/// What a reference may call a document, or an item of a list in it.
fn names_in<'r>(name: &'r Name, route: &Route<'r>) -> impl Iterator<Item = &'r str> {
    let items = route.iter().filter_map(|step| match step {
        Step::Named(name) => Some(*name),
        Step::Key(_) | Step::Index(_) => None,
    });
    std::iter::once(name.1.as_str()).chain(items)
}
