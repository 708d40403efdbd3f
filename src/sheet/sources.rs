//! The places a value came from, gathered while it is computed.
//!
//! Two sets are united by remembering both, which costs the same however many places they hold; the places are listed
//! only when somebody asks for them, and most lines are never asked.

use std::collections::HashSet;
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

#[cfg(test)]
mod tests {
    use super::Sources;
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
    fn unions_of_unions_are_walked_in_no_time() {
        let doubled = (0..64).fold(Sources::one(place(7)), |sources, _| {
            let one = sources.and(&Sources::one(place(8)));
            one.and(&sources)
        });
        assert_eq!(doubled.list(), [place(7), place(8)]);
    }
}
