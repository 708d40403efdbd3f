//! What a document takes in from elsewhere: of each value its route here, and where it is written.
//!
//! A place goes by the route in the document that the value counts in, wherever it is written. So two hops that take in the same
//! value have different places for it, and whatever is found is known by the hop; [`super::Files`] looks up where it is written
//! when something is shown.

use std::collections::HashMap;
use std::sync::Arc;

use crate::place::route::steps;
use crate::place::{DocumentId, Place, Step};
use crate::spec::Kind;

/// What a document takes in.
#[derive(Debug, Default)]
pub struct Inherits {
    /// In the order in which the document is read. What lies in another one of them, and comes with it, is not among them.
    pub list: Vec<Inherited>,
    /// The numbers of the list in order of the routes.
    by_route: Vec<usize>,
}

/// A value that is taken in.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Inherited {
    /// Its route in the document that takes it in.
    pub at: String,
    /// The document it is written in; the same one where it has only been put in order.
    pub from: DocumentId,
    /// Its kind.
    pub kind: Kind,
    /// Its id.
    pub id: Arc<str>,
    /// The route there.
    pub route: String,
}

impl Inherited {
    /// What it is taken from, in words.
    #[must_use]
    pub fn giver(&self) -> String {
        match self.kind {
            Kind::Template => format!("template `{}`", self.id),
            kind => format!("the defaults of {kind} `{}`", self.id),
        }
    }
}

impl Inherits {
    /// Puts values in order, those that hold others before them; none if there are none.
    #[must_use]
    pub fn of(values: impl Iterator<Item = Inherited>) -> Option<Self> {
        let mut list: Vec<Inherited> = Vec::new();
        let mut known: HashMap<String, usize> = HashMap::new();
        for one in values {
            let comes_with_another = nearest(&one.at, |route| known.get(route).copied()).is_some_and(|number| {
                let other = &list[number];
                let way = one.at.strip_prefix(other.at.as_str());
                other.from == one.from && way == one.route.strip_prefix(other.route.as_str())
            });
            if !comes_with_another {
                known.insert(one.at.clone(), list.len());
                list.push(one);
            }
        }
        let mut by_route: Vec<usize> = (0..list.len()).collect();
        by_route.sort_by(|one, other| list[*one].at.cmp(&list[*other].at));
        (!list.is_empty()).then_some(Self { list, by_route })
    }

    fn at(&self, route: &str) -> Option<usize> {
        let found = self.by_route.binary_search_by(|number| self.list[*number].at.as_str().cmp(route));
        found.ok().map(|at| self.by_route[at])
    }

    /// The value that is taken in at a place or above it, and the route in the document it is written in.
    #[must_use]
    pub fn find(&self, place: &Place) -> Option<(&Inherited, Vec<Step<'_>>)> {
        let nearest = &self.list[nearest(&place.route(), |route| self.at(route))?];
        let mut way = steps(&nearest.route);
        let rest: Vec<Step<'static>> = place.steps().skip(steps(&nearest.at).len()).collect();
        way.extend(rest);
        Some((nearest, way))
    }

    /// The documents it takes from, each once.
    #[must_use]
    pub fn documents(&self) -> Vec<DocumentId> {
        let mut documents: Vec<DocumentId> = self.list.iter().map(|one| one.from).collect();
        documents.sort_unstable();
        documents.dedup();
        documents
    }
}

/// What is found at a route, or at the nearest that holds it.
fn nearest(route: &str, find: impl Fn(&str) -> Option<usize>) -> Option<usize> {
    let mut route = route;
    loop {
        if let Some(found) = find(route) {
            return Some(found);
        }
        route = &route[..route.rfind(['.', '['])?];
    }
}

#[cfg(test)]
mod tests {
    use super::{Inherited, Inherits};
    use crate::place::route::spelled;
    use crate::place::{DocumentId, FileId, Place};
    use crate::spec::Kind;

    #[test]
    fn the_nearest_counts_and_the_rest_of_the_route_stays() {
        let from = |file| DocumentId { file: FileId(file), number: 0 };
        let one = |at: &str, file, route: &str| Inherited {
            at: at.into(),
            from: from(file),
            kind: Kind::Template,
            id: "jumper".into(),
            route: route.into(),
        };
        let list = [
            one("ends.a.runs", 1, "end.runs"),
            one("ends.a.runs[0].port", 1, "end.runs[0].port"),
            one("ends.a.runs[0].cable", 2, "run.cable"),
        ];
        let inherits = Inherits::of(list.into_iter()).expect("some");
        assert_eq!(inherits.list.len(), 2, "one comes with another");
        let found = |route| {
            let place = Place::document(from(0)).below(route, &[0]);
            inherits.find(&place).map(|(one, route)| (one.from.file.0, spelled(route)))
        };
        assert_eq!(found(&"ends.a.runs[i].port"), Some((1, "end.runs[0].port".into())));
        assert_eq!(found(&"ends.a.runs[i].cable"), Some((2, "run.cable".into())));
        assert_eq!(found(&"ends.a.run"), None);
        assert_eq!(inherits.documents().len(), 2);
    }
}
