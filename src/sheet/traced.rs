//! A value that carries the places it came from, so that no computation can forget an input.
//!
//! Leaves are read from documents by [`read!`](super::read), which takes value and place from the same words; a field that
//! is broken is missing from there on. Everything else is made of leaves by the combinators below, and they unite the
//! places of all that went in, whether there is a value or a reason why not. What is broken outweighs every other reason.

use std::sync::Arc;

use super::missing::{Cause, Missing};
use super::reason::Reason;
use super::shown::Shown;
use super::sources::Sources;
use crate::finding::Spot;
use crate::network::Holed;
use crate::place::Place;
use crate::spec::Window;
use crate::units::{Given, Quantity};

/// A value, or why there is none, with the places it came from.
#[derive(Debug, Clone)]
pub struct Traced<T> {
    value: Result<T, Arc<Missing>>,
    sources: Sources,
}

/// Reading it.
impl<T> Traced<T> {
    /// The value, or why there is none.
    ///
    /// # Errors
    /// The reason there is no value.
    pub fn value(&self) -> Result<&T, &Missing> {
        self.value.as_ref().map_err(|missing| &**missing)
    }

    /// The places it came from: what a person would change to change it.
    #[must_use]
    pub fn from(&self) -> Vec<Place> {
        self.sources.list()
    }

    /// Those places, not listed yet.
    pub(super) const fn sources(&self) -> &Sources {
        &self.sources
    }

    /// The first of those places.
    #[must_use]
    pub fn first_source(&self) -> Option<Place> {
        self.sources.first()
    }

    /// Where a fault in it is shown: its first source. A value without one is a constant, and those have no faults.
    pub(super) fn spot(&self) -> Spot {
        self.sources.first().map_or(Spot::Path(String::new()), Spot::Field)
    }

    /// Whether something it came from is broken.
    pub(super) fn is_broken(&self) -> bool {
        self.value.as_ref().is_err_and(|missing| missing.cause == Cause::Broken)
    }

    /// Whether it is missing and a rule of its own speaks of that.
    pub(super) fn is_unstated(&self) -> bool {
        self.value.as_ref().is_err_and(|missing| missing.cause == Cause::Judged)
    }
}

impl<T: Copy> Traced<T> {
    /// The value, if there is one.
    #[must_use]
    pub fn get(&self) -> Option<T> {
        self.value.as_ref().ok().copied()
    }
}

impl<T: Shown> Traced<T> {
    /// The same value unless it is none that can be printed: an infinity, or what comes of dividing nothing by nothing.
    pub(super) fn finite(self) -> Self {
        let endless = |value: &T| value.number().is_some_and(|(number, _)| !number.is_finite());
        if self.value.as_ref().is_ok_and(endless) {
            let value = Err(Arc::new(Missing::new(Reason::Endless, self.spot())));
            return Self { value, sources: self.sources };
        }
        self
    }
}

/// Leaves.
impl<T> Traced<T> {
    /// A value that nobody wrote.
    pub(super) fn constant(value: T) -> Self {
        Self { value: Ok(value), sources: Sources::default() }
    }

    /// A value that stands at a place.
    pub(super) fn at(value: T, place: Place) -> Self {
        Self { value: Ok(value), sources: Sources::one(place) }
    }

    /// No value; the place where one would be written is where it comes from.
    pub(super) fn missing(missing: Missing) -> Self {
        let sources = match &missing.spot {
            Spot::Field(place) | Spot::Entry(place, _) => Sources::one(*place),
            Spot::Bytes(..) | Spot::Path(_) => Sources::default(),
        };
        Self { value: Err(Arc::new(missing)), sources }
    }

    /// A field of a document; missing where it is broken.
    pub(super) fn field(document: &impl Holed, place: Place, value: T) -> Self {
        let hole = document.holes().and_then(|holes| holes.at(&place));
        let value = match hole {
            Some((name, spot)) => Err(Arc::new(Missing::broken(name, spot))),
            None => Ok(value),
        };
        Self { value, sources: Sources::one(place) }
    }
}

impl<T> Traced<T> {
    /// Another value in place of this one.
    pub(super) fn into_map<U>(self, make: impl FnOnce(T) -> U) -> Traced<U> {
        Traced { value: self.value.map(make), sources: self.sources }
    }
}

/// Combinators.
impl<T: Clone> Traced<T> {
    /// Another value by a computation that always gives one.
    pub(super) fn map<U>(&self, make: impl FnOnce(T) -> U) -> Traced<U> {
        Traced { value: self.value.clone().map(make), sources: self.sources.clone() }
    }

    /// Another value by a computation that may fail.
    pub(super) fn try_map<U>(&self, make: impl FnOnce(T) -> Result<U, Missing>) -> Traced<U> {
        let value = self.value.clone().and_then(|value| make(value).map_err(Arc::new));
        Traced { value, sources: self.sources.clone() }
    }

    /// The same, where a failure is one of what comes first among its sources.
    pub(super) fn check<U, E: Into<Reason>>(&self, make: impl FnOnce(T) -> Result<U, E>) -> Traced<U> {
        self.try_map(|value| make(value).map_err(|reason| Missing::new(reason, self.spot())))
    }

    /// The same, where a rule of its own speaks of the failure.
    pub(super) fn judge<U, E: Into<Reason>>(&self, make: impl FnOnce(T) -> Result<U, E>) -> Traced<U> {
        self.try_map(|value| make(value).map_err(|reason| Missing::judged(reason, self.spot())))
    }

    /// The same value unless it is refused, by a rule of its own.
    pub(super) fn unless(&self, refuse: impl FnOnce(&T) -> Option<Reason>) -> Self {
        self.try_map(|value| match refuse(&value) {
            Some(reason) => Err(Missing::judged(reason, self.spot())),
            None => Ok(value),
        })
    }

    /// Another value that is itself traced: which one is decided by this one.
    pub(super) fn and_then<U: Clone>(&self, choose: impl FnOnce(T) -> Traced<U>) -> Traced<U> {
        match &self.value {
            Ok(value) => choose(value.clone()).decided_by(self),
            Err(missing) => Traced { value: Err(Arc::clone(missing)), sources: self.sources.clone() },
        }
    }

    /// The same value, which would be another one if something else were otherwise. It is missing if that is broken.
    #[must_use]
    pub(super) fn decided_by<U>(self, other: &Traced<U>) -> Self {
        let sources = self.sources.and(&other.sources);
        match &other.value {
            Err(missing) if missing.cause == Cause::Broken => Self { value: Err(Arc::clone(missing)), sources },
            _ => Self { value: self.value, sources },
        }
    }

    /// This value or, where nobody stated one, another.
    pub(super) fn or(&self, other: impl FnOnce() -> Self) -> Self {
        if self.is_unstated() { other().decided_by(self) } else { self.clone() }
    }

    /// This value or, where nobody stated one, what is to be told of that.
    pub(super) fn or_told(&self, tell: impl FnOnce(&Reason) -> T) -> Self {
        match &self.value {
            Err(missing) if missing.cause == Cause::Judged => {
                Self { value: Ok(tell(&missing.reason)), sources: self.sources.clone() }
            }
            _ => self.clone(),
        }
    }

    /// The values of a list, all or none.
    pub(super) fn each<'t>(list: impl IntoIterator<Item = &'t Self>) -> Traced<Vec<T>>
    where
        T: 't,
    {
        list.into_iter().fold(Traced::constant(Vec::new()), |values, next| {
            let value = join(values.value, &next.value, |mut values, next| {
                values.push(next);
                values
            });
            Traced { value, sources: values.sources.and(&next.sources) }
        })
    }
}

impl<T: Clone> Traced<Option<T>> {
    /// What is written; else a reason that a rule reports under its own name.
    pub(super) fn stated(&self, otherwise: Reason) -> Traced<T> {
        self.value_or(|| Missing::judged(otherwise, self.spot()))
    }

    /// What is written; else a reason.
    pub(super) fn value_or(&self, otherwise: impl FnOnce() -> Missing) -> Traced<T> {
        self.try_map(|value| value.ok_or_else(otherwise))
    }
}

impl<'n, T> Traced<&'n Option<T>> {
    /// The first of several fields that is written; one that is broken may be. None if nobody wrote any.
    pub(super) fn first_written(fields: impl IntoIterator<Item = Self>) -> Option<Traced<&'n T>> {
        fields.into_iter().find_map(|Self { value, sources }| match value {
            Ok(None) => None,
            Ok(Some(value)) => Some(Traced { value: Ok(value), sources }),
            Err(missing) => Some(Traced { value: Err(missing), sources }),
        })
    }
}

/// One value made of two, if both are there. What is broken outweighs what is only missing; else the first reason counts.
fn join<A, B: Clone, U>(
    one: Result<A, Arc<Missing>>,
    other: &Result<B, Arc<Missing>>,
    make: impl FnOnce(A, B) -> U,
) -> Result<U, Arc<Missing>> {
    match (one, other) {
        (Ok(one), Ok(other)) => Ok(make(one, other.clone())),
        (Err(first), Err(other)) if other.cause == Cause::Broken && first.cause != Cause::Broken => {
            Err(Arc::clone(other))
        }
        (Err(first), _) => Err(first),
        (Ok(_), Err(other)) => Err(Arc::clone(other)),
    }
}

/// Something with a traced value: that value itself, or a line of the sheet.
pub(super) trait AsTraced {
    /// The type of its value.
    type Value: Clone;
    /// The value with its sources.
    fn traced(&self) -> &Traced<Self::Value>;
}

impl<T: Clone> AsTraced for Traced<T> {
    type Value = T;
    fn traced(&self) -> &Self {
        self
    }
}

/// Several traced values that go into one computation.
pub(super) trait Inputs {
    /// The types of their values, together.
    type Values: Clone;
    /// All of them at once, if all are there.
    fn together(self) -> Traced<Self::Values>;
}

/// Everything that goes into a computation: `all((&power, &gain)).map(|(power, gain)| power + gain)`.
pub(super) fn all<I: Inputs>(inputs: I) -> Traced<I::Values> {
    inputs.together()
}

macro_rules! inputs {
    ($($first:ident $($name:ident)*;)+) => {
        $(impl<$first: AsTraced, $($name: AsTraced),*> Inputs for (&$first, $(&$name),*) {
            type Values = ($first::Value, $($name::Value),*);

            #[allow(non_snake_case, reason = "a value is called like its type")]
            fn together(self) -> Traced<Self::Values> {
                let ($first, $($name),*) = self;
                let value = $first.traced().value.clone().map(|value| (value,));
                inputs!(@joined value [$first] $($name)*);
                Traced { value, sources: Sources::all([$first.traced().sources(), $($name.traced().sources()),*]) }
            }
        })+
    };
    (@joined $all:ident [$($done:ident)+]) => {};
    (@joined $all:ident [$($done:ident)+] $next:ident $($rest:ident)*) => {
        let $all = join($all, &$next.traced().value, |($($done,)+), next| ($($done,)+ next));
        inputs!(@joined $all [$($done)+ $next] $($rest)*);
    };
}

inputs! {
    A B;
    A B C;
    A B C D;
    A B C D E;
    A B C D E F;
    A B C D E F G;
    A B C D E F G H;
}

/// What is written in a field, apart from its words.
pub(super) trait Written {
    /// What is computed with.
    type Value;
    /// Takes it out.
    fn take(&self) -> Self::Value;
}

impl<Q: Copy> Written for Given<Q> {
    type Value = Q;
    fn take(&self) -> Q {
        self.value
    }
}

impl<Q: Quantity> Written for Window<Q> {
    type Value = [Q; 2];
    fn take(&self) -> [Q; 2] {
        [self.min.value, self.max.value]
    }
}

impl<Q: Copy> Written for Option<Given<Q>> {
    type Value = Option<Q>;
    fn take(&self) -> Option<Q> {
        self.as_ref().map(|given| given.value)
    }
}

/// A field of a document by reference: `see!(run.carries)`.
macro_rules! see {
    ($thing:ident $($route:tt)+) => {
        $crate::sheet::traced::Traced::field(&$thing, $crate::at!($thing $($route)+), &$thing $($route)+)
    };
}

/// The quantity in a field of a document, to compute with: `read!(end.height)`.
macro_rules! read {
    ($($field:tt)+) => {
        $crate::sheet::traced::see!($($field)+).into_map($crate::sheet::traced::Written::take)
    };
}

/// What is written in a field of a document, words and all: `written!(end.height)`.
macro_rules! written {
    ($($field:tt)+) => {
        $crate::sheet::traced::see!($($field)+).into_map(Clone::clone)
    };
}

pub(super) use {read, see, written};
