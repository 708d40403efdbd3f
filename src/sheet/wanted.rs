//! Something asked for: by whom, or the stated default that stands in.

use super::missing::Missing;
use super::traced::{AsTraced, Traced};
use crate::place::Place;
use crate::units::{Given, Quantity};

/// Something asked for, and where.
#[derive(Debug, Clone)]
pub struct Wanted<Q> {
    /// What is asked for.
    pub given: Given<Q>,
    /// Who asked: the field, or the place where it would stand in the network where a default stands in.
    pub place: Place,
    /// Nobody asked; a stated default stands in.
    pub assumed: bool,
    traced: Traced<Q>,
}

impl<Q: Copy> Wanted<Q> {
    /// The value.
    pub fn value(&self) -> Q {
        self.given.value
    }

    /// The value with its words, to show as it is written.
    pub(super) fn written(&self) -> Traced<Given<Q>>
    where
        Given<Q>: Clone,
    {
        let given = self.given.clone();
        self.traced.map(|_| given)
    }

    /// The same, which would be another one if something else were otherwise.
    pub(super) fn decided_by<U>(self, other: &Traced<U>) -> Self {
        Self { traced: self.traced.decided_by(other), ..self }
    }
}

impl<Q: Copy> AsTraced for Wanted<Q> {
    type Value = Q;

    fn traced(&self) -> &Traced<Q> {
        &self.traced
    }
}

/// Those who may ask for something, one after the other: the first who does counts.
///
/// One whose field is broken may have asked, so nothing goes by what the next one says.
pub(super) struct Asked<Q> {
    found: Option<Wanted<Q>>,
    broken: Option<(Traced<Q>, Place)>,
}

impl<Q: Quantity> Asked<Q> {
    /// What a field asks for.
    pub(super) fn by(field: &Traced<Option<Given<Q>>>) -> Self {
        let Some(place) = field.first_source() else { return Self { found: None, broken: None } };
        let traced = field.map(|given| given.map_or(Q::new(0.0), |given| given.value));
        match field.value() {
            Ok(given) => {
                let found = given.clone().map(|given| Wanted { given, place, assumed: false, traced });
                Self { found, broken: None }
            }
            Err(_) => Self { found: None, broken: Some((traced, place)) },
        }
    }

    /// What the next one asks for, where nobody did so far.
    pub(super) fn or(self, next: Self) -> Self {
        let found = self.found.or(next.found);
        let broken = self.broken.or(if found.is_some() { None } else { next.broken });
        Self { found: found.map(|found| untrusted(found, broken.as_ref())), broken }
    }

    /// A default where nobody asked; `place` is where the network would say otherwise.
    pub(super) fn or_assume(self, value: Q, place: Place) -> Wanted<Q> {
        let (given, traced) = (Given::assumed(value), Traced::at(value, place));
        let assumed = Wanted { given, place, assumed: true, traced };
        self.found.unwrap_or_else(|| untrusted(assumed, self.broken.as_ref()))
    }

    /// What the last one asks for, who must.
    pub(super) fn or_else(self, required: Wanted<Q>) -> Wanted<Q> {
        self.found.unwrap_or_else(|| untrusted(required, self.broken.as_ref()))
    }

    /// The greater of what two ask for side by side: both decide.
    pub(super) fn or_greater(self, other: Self) -> Self {
        let found = match (self.found, other.found) {
            (Some(one), Some(two)) if one.value() > two.value() => Some(one.decided_by(&two.traced)),
            (Some(one), Some(two)) => Some(two.decided_by(&one.traced)),
            (one, two) => one.or(two),
        };
        let broken = self.broken.or(other.broken);
        Self { found: found.map(|found| untrusted(found, broken.as_ref())), broken }
    }

    /// What was asked for, if anybody asked.
    pub(super) fn wanted(self) -> Option<Wanted<Q>> {
        let unknown = |(traced, place): (Traced<Q>, Place)| {
            let given = Given::assumed(Q::new(0.0));
            Wanted { given, place, assumed: false, traced }
        };
        self.found.or(self.broken.map(unknown))
    }
}

/// Something found behind a field that is broken.
fn untrusted<Q: Quantity>(found: Wanted<Q>, broken: Option<&(Traced<Q>, Place)>) -> Wanted<Q> {
    match broken {
        Some((broken, _)) => found.decided_by(broken),
        None => found,
    }
}

impl<Q: Quantity> Wanted<Q> {
    /// What a field asks for that must be there. Its words are kept even where they are a stand-in, to be shown to nobody.
    pub(super) fn required(field: &Traced<Given<Q>>, place: Place, written: &Given<Q>) -> Self {
        Self { given: written.clone(), place, assumed: false, traced: field.map(|given| given.value) }
    }

    /// What is asked for, words and all; else why nothing is.
    pub(super) fn written_or(wanted: Option<&Self>, missing: impl FnOnce() -> Missing) -> Traced<Given<Q>> {
        wanted.map_or_else(|| Traced::missing(missing()), Self::written)
    }
}

/// What a field of a document asks for: `asked!(hop.climate.fog)`.
macro_rules! asked {
    ($($field:tt)+) => {
        $crate::sheet::wanted::Asked::by(&$crate::sheet::traced::written!($($field)+))
    };
}

/// What a field of a document asks for that must be there: `required!(network.objectives.capacity)`.
macro_rules! required {
    ($thing:ident $($route:tt)+) => {
        $crate::sheet::wanted::Wanted::required(
            &$crate::sheet::traced::written!($thing $($route)+),
            $crate::at!($thing $($route)+),
            &$thing $($route)+,
        )
    };
}

pub(super) use {asked, required};
