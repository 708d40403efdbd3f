//! The places a value came from, gathered while it is computed.
//!
//! Sets are united by remembering them all, which costs the same however many places they hold; the places are listed
//! only when somebody asks for them, and most lines are never asked.

use std::collections::HashSet;
use std::sync::Arc;

use crate::place::Place;

/// A set of places, in the order in which they came.
#[derive(Debug, Clone, Default)]
pub struct Sources(Set);

/// A single place is held right here: most are, and are copied more often than united.
#[derive(Debug, Clone, Default)]
enum Set {
    #[default]
    None,
    One(Place),
    /// Those of several together.
    All(Arc<[Sources]>),
}

impl Sources {
    /// A single place.
    pub(super) const fn one(place: Place) -> Self {
        Self(Set::One(place))
    }

    /// The places of both.
    #[must_use]
    pub(super) fn and(&self, other: &Self) -> Self {
        match (&self.0, &other.0) {
            (Set::One(one), Set::One(two)) if one == two => self.clone(),
            (Set::All(one), Set::All(two)) if Arc::ptr_eq(one, two) => self.clone(),
            _ => Self::all([self, other]),
        }
    }

    /// The places of several.
    #[must_use]
    pub(super) fn all<const N: usize>(several: [&Self; N]) -> Self {
        let mut some = several.iter().filter(|one| !matches!(one.0, Set::None));
        match (some.next(), some.next()) {
            (None, _) => Self::default(),
            (Some(one), None) => (*one).clone(),
            _ => Self(Set::All(Arc::new(several.map(Clone::clone)))),
        }
    }

    /// The first of them.
    #[must_use]
    pub fn first(&self) -> Option<Place> {
        let mut at = self;
        loop {
            match &at.0 {
                Set::None => return None,
                Set::One(place) => return Some(*place),
                Set::All(all) => at = all.iter().find(|one| !matches!(one.0, Set::None))?,
            }
        }
    }

    /// All of them, each once.
    #[must_use]
    pub fn list(&self) -> Vec<Place> {
        let (mut places, mut listed, mut met) = (Vec::new(), HashSet::new(), HashSet::new());
        let mut open: Vec<&Self> = vec![self];
        while let Some(sources) = open.pop() {
            match &sources.0 {
                Set::None => {}
                Set::One(place) => {
                    if listed.insert(*place) {
                        places.push(*place);
                    }
                }
                // What was united in several ways is walked once.
                Set::All(all) => {
                    if met.insert(all.as_ptr()) {
                        open.extend(all.iter().rev());
                    }
                }
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
