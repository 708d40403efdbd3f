//! What lies between a radio and its antenna: feeders, guides, couplers.

use super::missing::Missing;
use super::reason::Reason;
use super::saying::Saying;
use super::traced::{Traced, all, read, see};
use crate::at;
use crate::network::ResolvedEnd;
use crate::units::Decibels;

/// The losses of one end.
pub(super) struct EndLosses {
    /// Their sum; unstated where nothing lies between.
    pub(super) sum: Traced<Decibels>,
    /// What they are, each with its loss.
    pub(super) names: Traced<Saying>,
}

/// Those of the end that sends and of the end that listens. Where only one has any, the other has none in figures.
pub(super) fn of(ends: [&ResolvedEnd<'_>; 2]) -> [EndLosses; 2] {
    let [one, two] = ends.map(EndLosses::of);
    let beside = |losses: &EndLosses, other: &EndLosses| {
        let sum = if other.sum.value().is_ok() { losses.counted() } else { losses.sum.clone() };
        EndLosses { sum: sum.decided_by(&other.sum), names: losses.names.clone() }
    };
    [beside(&one, &two), beside(&two, &one)]
}

impl EndLosses {
    pub(super) fn of(own: &ResolvedEnd<'_>) -> Self {
        let end = own.end;
        let listed = see!(end.losses);
        if end.losses.is_empty() && !listed.is_broken() {
            let none = Missing::judged(Reason::NoLosses, at!(end.losses));
            return Self { sum: Traced::missing(none.clone()), names: Traced::missing(none) };
        }
        let each: Vec<Traced<Decibels>> = (0..end.losses.len()).map(|i| read!(end.losses[i].loss)).collect();
        let sum = all((&listed, &Traced::each(&each)))
            .map(|(_, each)| each.into_iter().fold(Decibels(0.0), |sum, loss| sum + loss));
        let names = sum.map(|_| {
            let words: Vec<String> = end.losses.iter().map(|loss| format!("{} {}", loss.title, loss.loss)).collect();
            Saying::name(words.join(", "))
        });
        Self { sum, names }
    }

    /// The sum, nothing where nothing lies between.
    pub(super) fn counted(&self) -> Traced<Decibels> {
        self.sum.or(|| Traced::constant(Decibels(0.0)))
    }
}
