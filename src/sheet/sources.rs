//! The places a value came from, gathered while it is computed.
//!
//! Sets are united by remembering them all, which costs the same however many places they hold; the places are listed
//! only when somebody asks for them, and most lines are never asked.

use std::collections::{HashMap, HashSet};
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

/// The places of many values, each of which has a number, in the order in which they came.
///
/// Values are made of each other: one that has been listed is not walked again below another.
#[derive(Debug, Default)]
pub struct Listed {
    places: Vec<Place>,
    numbers: HashMap<Place, usize>,
    known: HashMap<*const Sources, Vec<usize>>,
}

impl Listed {
    /// All places, by their numbers.
    #[must_use]
    pub fn places(&self) -> &[Place] {
        &self.places
    }

    /// The numbers of the places of a value, each once, in the order of [`Sources::list`]. The values that were asked about
    /// before must still be there.
    pub fn numbers(&mut self, sources: &Sources) -> Vec<usize> {
        let Set::All(all) = &sources.0 else { return self.walk(sources) };
        let root = all.as_ptr();
        if let Some(known) = self.known.get(&root) {
            return known.clone();
        }
        let listed = self.walk(sources);
        self.known.insert(root, listed.clone());
        listed
    }

    fn walk(&mut self, sources: &Sources) -> Vec<usize> {
        let (mut found, mut met) = (Vec::new(), HashSet::new());
        let mut listed = vec![false; self.places.len()];
        let mut open: Vec<&Sources> = vec![sources];
        while let Some(sources) = open.pop() {
            match &sources.0 {
                Set::None => {}
                Set::One(place) => {
                    let number = *self.numbers.entry(*place).or_insert_with(|| {
                        self.places.push(*place);
                        listed.push(false);
                        self.places.len() - 1
                    });
                    if !std::mem::replace(&mut listed[number], true) {
                        found.push(number);
                    }
                }
                Set::All(all) => match self.known.get(&all.as_ptr()) {
                    Some(known) => {
                        found.extend(known.iter().filter(|number| !std::mem::replace(&mut listed[**number], true)));
                    }
                    None if met.insert(all.as_ptr()) => open.extend(all.iter().rev()),
                    None => {}
                },
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
            let numbers = listed.numbers(sources);
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
