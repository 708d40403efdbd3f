//! Changes to the values of a document, not to its text: what is broken is left out or stands in, so that the rest can be
//! typed and judged.

use serde_yaml::Value;

use crate::place::Step;

/// What changes at a place of a document and below it.
#[derive(Debug, Default)]
pub struct Mends<'d> {
    pub(super) here: Change,
    pub(super) below: Vec<(Step<'d>, Mends<'d>)>,
}

/// What becomes of a value.
#[derive(Debug, Default, PartialEq)]
pub(super) enum Change {
    /// Nothing.
    #[default]
    Kept,
    /// It is left out, and its key with it.
    LeftOut,
    /// Another one stands in for it.
    StandIn(Value),
}

impl<'d> Mends<'d> {
    /// Puts a value at the end of a route, under a key that is there or a new one; without a value, takes the key out.
    ///
    /// The last word at a place counts; what lies in something that has changed already is gone with it. An item of a list
    /// is not taken out.
    pub fn put(&mut self, route: &[Step<'d>], value: Option<Value>) {
        match (route, value) {
            ([], value) => {
                self.here = Change::StandIn(value.unwrap_or_default());
                self.below.clear();
            }
            ([Step::Index(_)], None) => {}
            _ if self.here != Change::Kept => {}
            ([key], None) => {
                let below = self.below(*key);
                (below.here, below.below) = (Change::LeftOut, Vec::new());
            }
            ([first, rest @ ..], value) => self.below(*first).put(rest, value),
        }
    }

    /// The places that change, each by its way from the root.
    #[must_use]
    pub fn routes(&self) -> Vec<Vec<Step<'d>>> {
        let own = (self.here != Change::Kept).then(Vec::new);
        let below = self.below.iter().flat_map(|(step, mends)| {
            mends.routes().into_iter().map(move |route| std::iter::once(*step).chain(route).collect())
        });
        own.into_iter().chain(below).collect()
    }

    fn below(&mut self, step: Step<'d>) -> &mut Self {
        let at = self.below.iter().position(|(known, _)| *known == step).unwrap_or_else(|| {
            self.below.push((step, Mends::default()));
            self.below.len() - 1
        });
        &mut self.below[at].1
    }

    /// What changes one step further down.
    pub(super) fn at(&self, step: Step<'_>) -> Option<&Self> {
        self.below.iter().find(|(known, _)| *known == step).map(|(_, mends)| mends)
    }
}

#[cfg(test)]
mod tests {
    use serde_yaml::Value;

    use super::{Change, Mends};
    use crate::place::Step::{Index, Key};

    #[test]
    fn the_last_word_at_a_place_counts_and_covers_what_lies_in_it() {
        let mut mends = Mends::default();
        let word = |text: &str| Some(Value::from(text));
        mends.put(&[Key("ends"), Key("a")], word("first"));
        mends.put(&[Key("ends"), Key("a")], word("last"));
        mends.put(&[Key("ends"), Key("a"), Key("site")], word("within"));
        mends.put(&[Key("runs"), Index(0)], None);
        mends.put(&[Key("runs"), Index(1), Key("port")], None);
        let a = mends.at(Key("ends")).and_then(|ends| ends.at(Key("a"))).expect("a mend");
        assert_eq!(a.here, Change::StandIn(Value::from("last")));
        assert!(a.below.is_empty());
        assert_eq!(mends.routes(), [vec![Key("ends"), Key("a")], vec![Key("runs"), Index(1), Key("port")]]);
    }
}
