//! What lies between a radio and its antenna: feeders, guides, couplers.

use super::missing::Missing;
use super::reason::Reason;
use super::saying::Saying;
use super::traced::{Traced, all, read, see};
use crate::air::feeder_loss;
use crate::at;
use crate::network::{Document, ResolvedEnd};
use crate::spec::Feeder;
use crate::units::{Decibels, Gigahertz};

/// The losses of one end.
pub(super) struct EndLosses {
    /// Their sum; unstated where nothing lies between.
    pub(super) sum: Traced<Decibels>,
    /// What they are, each with its loss.
    pub(super) names: Traced<Saying>,
}

/// Those of the end that sends and of the end that listens. Where only one has any, the other has none in figures.
pub(super) fn of(ends: [&ResolvedEnd<'_>; 2], frequency: &Traced<Gigahertz>) -> [EndLosses; 2] {
    let [one, two] = ends.map(|end| EndLosses::of(end, frequency));
    let beside = |losses: &EndLosses, other: &EndLosses| {
        let sum = if other.sum.value().is_ok() { losses.counted() } else { losses.sum.clone() };
        EndLosses { sum: sum.decided_by(&other.sum), names: losses.names.clone() }
    };
    [beside(&one, &two), beside(&two, &one)]
}

impl EndLosses {
    /// Those of an end at a frequency.
    pub(super) fn of(own: &ResolvedEnd<'_>, frequency: &Traced<Gigahertz>) -> Self {
        let end = own.end;
        let (listed, feeder) = (see!(end.losses), feeder(own, frequency));
        if end.losses.is_empty() && end.feeder.is_none() && !listed.is_broken() && !see!(end.feeder).is_broken() {
            let none = Missing::judged(Reason::NoLosses, at!(end.losses));
            return Self { sum: Traced::missing(none.clone()), names: Traced::missing(none) };
        }
        let each: Vec<Traced<Decibels>> = (0..end.losses.len()).map(|i| read!(end.losses[i].loss)).collect();
        let sum = all((&listed, &Traced::each(&each), &feeder)).map(|(_, each, feeder)| {
            let feeder = feeder.unwrap_or_default();
            each.into_iter().fold(feeder, |sum, loss| sum + loss)
        });
        let names = all((&sum, &feeder)).map(|(_, lost)| {
            let feeder = own.feeder.zip(end.spec.feeder.as_ref()).zip(lost);
            let feeder = feeder.map(|((feeder, used), lost)| format!("{} {} {lost}", feeder.title, used.length));
            let others = end.losses.iter().map(|loss| format!("{} {}", loss.title, loss.loss));
            let words: Vec<String> = feeder.into_iter().chain(others).collect();
            Saying::name(words.join(", "))
        });
        Self { sum, names }
    }

    /// The sum, nothing where nothing lies between.
    pub(super) fn counted(&self) -> Traced<Decibels> {
        self.sum.or(|| Traced::constant(Decibels(0.0)))
    }
}

/// What a feeder takes at a frequency; none where there is no feeder.
fn feeder(own: &ResolvedEnd<'_>, frequency: &Traced<Gigahertz>) -> Traced<Option<Decibels>> {
    let end = own.end;
    let used = see!(end.feeder);
    let Some(feeder) = own.feeder else { return used.map(|_| None) };
    let known: &Document<Feeder> = feeder;
    let sheet = all((&see!(known.loss_by_frequency), &see!(known.construction), &see!(known.inside)));
    let lost =
        all((&sheet, frequency)).check(|(_, frequency)| feeder_loss(known, frequency).ok_or(Reason::NoFeederLoss));
    all((&used, &lost)).map(|(used, lost)| used.as_ref().map(|used| lost * used.length.value))
}
