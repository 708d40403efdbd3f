//! The two ends of a hop and the two ways through it, and what there is one of for each.

use std::fmt;
use std::ops::{Index, IndexMut};

use schemars::JsonSchema;
use serde::Deserialize;

/// An end of a hop.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum EndName {
    /// End `a`.
    A,
    /// End `b`.
    B,
}

impl EndName {
    /// Both, `a` first.
    pub const BOTH: [Self; 2] = [Self::A, Self::B];

    /// The letter as written.
    #[must_use]
    pub const fn letter(self) -> &'static str {
        match self {
            Self::A => "a",
            Self::B => "b",
        }
    }

    /// The end of this letter.
    #[must_use]
    pub fn from_letter(letter: &str) -> Option<Self> {
        Self::BOTH.into_iter().find(|end| end.letter() == letter)
    }

    /// The end it looks at.
    #[must_use]
    pub const fn far(self) -> Self {
        match self {
            Self::A => Self::B,
            Self::B => Self::A,
        }
    }

    /// The way on which it sends.
    #[must_use]
    pub const fn outgoing(self) -> Way {
        match self {
            Self::A => Way::AToB,
            Self::B => Way::BToA,
        }
    }

    /// The way on which it listens.
    #[must_use]
    pub const fn incoming(self) -> Way {
        self.far().outgoing()
    }
}

impl fmt::Display for EndName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.letter())
    }
}

/// A way through a hop, from the end that sends to the end that listens.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Way {
    /// From `a` to `b`.
    AToB,
    /// From `b` to `a`.
    BToA,
}

impl Way {
    /// Both, from `a` first.
    pub const BOTH: [Self; 2] = [Self::AToB, Self::BToA];

    /// The end that sends.
    #[must_use]
    pub const fn sender(self) -> EndName {
        match self {
            Self::AToB => EndName::A,
            Self::BToA => EndName::B,
        }
    }

    /// The end that listens.
    #[must_use]
    pub const fn receiver(self) -> EndName {
        self.sender().far()
    }

    /// The way back.
    #[must_use]
    pub const fn reversed(self) -> Self {
        self.receiver().outgoing()
    }

    /// The key of its channel in a hop, which also opens the keys of its lines.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::AToB => "a_to_b",
            Self::BToA => "b_to_a",
        }
    }

    /// The words for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::AToB => "a to b",
            Self::BToA => "b to a",
        }
    }
}

impl fmt::Display for Way {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// One for each end, or one for each way: that of a way belongs to the end that sends.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Both<T> {
    /// That of end `a`, or of the way from `a` to `b`.
    pub a: T,
    /// That of end `b`, or of the way from `b` to `a`.
    pub b: T,
}

impl<T> Both<T> {
    /// Makes one for each end.
    pub fn ends(mut make: impl FnMut(EndName) -> T) -> Self {
        Self { a: make(EndName::A), b: make(EndName::B) }
    }

    /// Makes one for each way.
    pub fn ways(mut make: impl FnMut(Way) -> T) -> Self {
        Self::ends(|end| make(end.outgoing()))
    }

    /// Makes another of each.
    pub fn map<U>(self, mut make: impl FnMut(T) -> U) -> Both<U> {
        Both { a: make(self.a), b: make(self.b) }
    }

    /// Both at once, or neither.
    pub fn all<U>(self, mut make: impl FnMut(T) -> Option<U>) -> Option<Both<U>> {
        Some(Both { a: make(self.a)?, b: make(self.b)? })
    }

    /// Lends both.
    pub const fn each_ref(&self) -> Both<&T> {
        Both { a: &self.a, b: &self.b }
    }

    /// Each of two together.
    pub fn zip<U>(self, other: Both<U>) -> Both<(T, U)> {
        Both { a: (self.a, other.a), b: (self.b, other.b) }
    }

    /// Both in order.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = &T> + Clone {
        [&self.a, &self.b].into_iter()
    }

    /// Both in order, to be changed.
    pub fn iter_mut(&mut self) -> impl Iterator<Item = &mut T> {
        [&mut self.a, &mut self.b].into_iter()
    }
}

impl<T> IntoIterator for Both<T> {
    type Item = T;
    type IntoIter = std::array::IntoIter<T, 2>;

    fn into_iter(self) -> Self::IntoIter {
        [self.a, self.b].into_iter()
    }
}

impl<T> Index<EndName> for Both<T> {
    type Output = T;

    fn index(&self, end: EndName) -> &T {
        match end {
            EndName::A => &self.a,
            EndName::B => &self.b,
        }
    }
}

impl<T> IndexMut<EndName> for Both<T> {
    fn index_mut(&mut self, end: EndName) -> &mut T {
        match end {
            EndName::A => &mut self.a,
            EndName::B => &mut self.b,
        }
    }
}

impl<T> Index<Way> for Both<T> {
    type Output = T;

    fn index(&self, way: Way) -> &T {
        &self[way.sender()]
    }
}

impl<T> IndexMut<Way> for Both<T> {
    fn index_mut(&mut self, way: Way) -> &mut T {
        &mut self[way.sender()]
    }
}

#[cfg(test)]
mod tests {
    use super::{Both, EndName, Way};

    #[test]
    fn a_way_leads_from_one_end_to_the_other() {
        for way in Way::BOTH {
            assert_eq!(way.receiver(), way.sender().far());
            assert_eq!(way.reversed().sender(), way.receiver());
            assert_eq!((way.sender().outgoing(), way.receiver().incoming()), (way, way));
        }
        assert_eq!((Way::AToB.key(), Way::BToA.to_string().as_str()), ("a_to_b", "b to a"));
    }

    #[test]
    fn what_belongs_to_a_way_is_that_of_its_sender() {
        let letters = Both::ends(EndName::letter);
        assert_eq!((letters[EndName::B], letters[Way::BToA]), ("b", "b"));
        assert_eq!(Both::ways(Way::key).into_iter().collect::<Vec<_>>(), ["a_to_b", "b_to_a"]);
    }
}
