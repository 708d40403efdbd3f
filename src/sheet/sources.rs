//! The places a value came from, gathered while it is computed.
//!
//! Two sets are united by remembering both, which costs the same however many places they hold; the places are listed
//! only when somebody asks for them, and most lines are never asked.

use std::collections::{HashMap, HashSet};
use std::sync::Arc;

use crate::place::Place;

/// A set of places, in the order in which they came.
#[derive(Debug, Clone, Default)]
pub struct Sources(Option<Arc<Node>>);

#[derive(Debug)]
enum Node {
    One(Place),
    Both(Sources, Sources),
}

impl Sources {
    /// A single place.
    pub(super) fn one(place: Place) -> Self {
        Self(Some(Arc::new(Node::One(place))))
    }

    /// The places of both.
    #[must_use]
    pub(super) fn and(&self, other: &Self) -> Self {
        match (&self.0, &other.0) {
            (None, _) => other.clone(),
            (_, None) => self.clone(),
            (Some(one), Some(two)) if Arc::ptr_eq(one, two) => self.clone(),
            _ => Self(Some(Arc::new(Node::Both(self.clone(), other.clone())))),
        }
    }

    /// The first of them.
    #[must_use]
    pub fn first(&self) -> Option<Place> {
        let mut at = self.0.as_deref()?;
        loop {
            match at {
                Node::One(place) => return Some(*place),
                Node::Both(first, _) => at = first.0.as_deref()?,
            }
        }
    }

    /// All of them, each once.
    #[must_use]
    pub fn list(&self) -> Vec<Place> {
        let (mut places, mut listed, mut met) = (Vec::new(), HashSet::new(), HashSet::new());
        let mut open: Vec<&Self> = vec![self];
        while let Some(sources) = open.pop() {
            // What was united in several ways is walked once.
            let Some(node) = sources.0.as_ref().filter(|node| met.insert(Arc::as_ptr(node))) else { continue };
            match &**node {
                Node::One(place) if listed.insert(*place) => places.push(*place),
                Node::One(_) => {}
                Node::Both(one, other) => open.extend([other, one]),
            }
        }
        places
    }
}

/// The places of many values, each of which has a number, in the order in which they came.
///
/// Values are made of each other: one that has been listed is not walked again below another.
#[derive(Debug, Default)]
pub struct Listed {
    places: Vec<Place>,
    numbers: HashMap<Place, usize>,
    known: HashMap<*const Node, Vec<usize>>,
}

impl Listed {
    /// All places, by their numbers.
    #[must_use]
    pub fn places(&self) -> &[Place] {
        &self.places
    }

    /// The numbers of the places of a value, each once, in the order of [`Sources::list`]. The values that were asked about
    /// before must still be there.
    pub fn numbers(&mut self, sources: &Sources) -> &[usize] {
        let Some(root) = &sources.0 else { return &[] };
        let root = Arc::as_ptr(root);
        if !self.known.contains_key(&root) {
            let listed = self.walk(sources);
            self.known.insert(root, listed);
        }
        &self.known[&root]
    }

    fn walk(&mut self, sources: &Sources) -> Vec<usize> {
        let (mut found, mut met) = (Vec::new(), HashSet::new());
        let mut listed = vec![false; self.places.len()];
        let mut open: Vec<&Sources> = vec![sources];
        while let Some(sources) = open.pop() {
            let Some(node) = &sources.0 else { continue };
            if let Some(known) = self.known.get(&Arc::as_ptr(node)) {
                found.extend(known.iter().filter(|number| !std::mem::replace(&mut listed[**number], true)));
                continue;
            }
            match &**node {
                Node::One(place) => {
                    let number = *self.numbers.entry(*place).or_insert_with(|| {
                        self.places.push(*place);
                        listed.push(false);
                        self.places.len() - 1
                    });
                    if !std::mem::replace(&mut listed[number], true) {
                        found.push(number);
                    }
                }
                Node::Both(one, other) if met.insert(Arc::as_ptr(node)) => open.extend([other, one]),
                Node::Both(..) => {}
            }
        }
        found
    }
}

#[cfg(test)]
mod tests {
    use super::{Listed, Sources};
    use crate::place::{DocumentId, FileId, Place};

    fn place(number: u16) -> Place {
        Place::document(DocumentId { file: FileId(0), number })
    }

    #[test]
    fn a_union_lists_every_place_once_and_in_order() {
        let [a, b, c] = [1, 2, 3].map(|number| Sources::one(place(number)));
        let ab = a.and(&b);
        let all = ab.and(&c).and(&ab).and(&Sources::default());
        assert_eq!(all.list(), [place(1), place(2), place(3)]);
        assert_eq!((all.first(), Sources::default().first()), (Some(place(1)), None));
    }

    #[test]
    fn what_was_listed_is_known_and_comes_in_the_same_order() {
        let [a, b, c] = [1, 2, 3].map(|number| Sources::one(place(number)));
        let ab = a.and(&b);
        let all = [ab.clone(), c.and(&ab), b.and(&c).and(&ab), Sources::default(), a, ab];
        let mut listed = Listed::default();
        for sources in &all {
            let numbers = listed.numbers(sources).to_vec();
            let places: Vec<Place> = numbers.into_iter().map(|number| listed.places()[number]).collect();
            assert_eq!(places, sources.list());
        }
        assert_eq!(listed.places(), [place(1), place(2), place(3)]);
    }

    #[test]
    fn unions_of_unions_are_walked_in_no_time() {
        let doubled = (0..64).fold(Sources::one(place(7)), |sources, _| {
            let one = sources.and(&Sources::one(place(8)));
            one.and(&sources)
        });
        assert_eq!(doubled.list(), [place(7), place(8)]);
    }
}
