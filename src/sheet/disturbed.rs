//! What an end puts into the receivers of other owners.

use super::hearing::Hearing;
use super::key::SectionKey;
use super::line::{Section, lines};
use super::missing::Missing;
use super::reason::Reason;
use super::saying::Saying;
use super::target::Target;
use super::title::Title;
use super::traced::{Traced, all};
use super::wanted::Wanted;
use crate::air::{Disturbed, Owner};
use crate::at;
use crate::network::ResolvedHop;
use crate::place::Place;
use crate::spec::Way;
use crate::units::{Decibels, Quantity as _};

lines! {
    /// What the sender of a way puts into the receiver of a neighbour.
    DisturbedLines {
        neighbour: Saying, "", "neighbour it comes through to most", "that where I/N is greatest";
        over_noise: Decibels, "I/N", "level there over the noise of that receiver",
            "as interference from other senders is computed; one sender alone";
        in_hand: Decibels, "", "level at the neighbour in hand", "the limit of the network less I/N";
    }
}

/// What an end puts into the receivers of other owners.
#[derive(Debug)]
pub struct DisturbedSheet {
    /// The worst of it.
    pub lines: DisturbedLines,
    /// Neighbours that get more than the limit, the worst first.
    pub above: Vec<Reached>,
    /// The limit.
    pub limit: Wanted<Decibels>,
}

/// A neighbour that gets more than the limit.
#[derive(Debug)]
pub struct Reached {
    /// As a message calls it.
    pub called: String,
    /// Where it is described.
    pub place: Place,
    /// Level over its noise; none at one's own site.
    pub over_noise: Option<Decibels>,
}

impl DisturbedSheet {
    pub(super) fn section(&self, way: Way) -> Section {
        self.lines.section(SectionKey::Disturbed(way), Title::Disturbed { way }).planned()
    }
}

/// That of the end that sends on a way.
pub(super) fn compute(resolved: &ResolvedHop<'_>, way: Way, hearing: &Hearing<'_>, target: &Target) -> DisturbedSheet {
    let hop = resolved.hop;
    let number = hearing.air().number(hop.at, way.sender());
    let reached = number.map(|number| hearing.air().disturbed_by(number)).unwrap_or_default();
    let none = || Missing::judged(Reason::NoNeighbourReached, at!(hop.id));
    let worst: Traced<Disturbed> = match (number, reached.first()) {
        (Some(number), Some(worst)) => {
            let places = all((hearing.sending(number), hearing.listening(worst.number)));
            places.map(|_| *worst)
        }
        _ => Traced::missing(none()),
    };
    let limit = target.neighbour_disturbance.clone();
    let over_noise = worst.try_map(|worst| worst.over_noise.ok_or_else(none));
    let called = |number: usize| hearing.station(number).owner.to_string();
    let too_much = |reached: &&Disturbed| reached.over_noise.is_none_or(|over| over.tidy() > limit.value());
    let above = reached.iter().filter(too_much).filter_map(|reached| {
        let Owner::Neighbour(neighbour) = hearing.station(reached.number).owner else { return None };
        let (called, place) = (called(reached.number), at!(neighbour.id));
        Some(Reached { called, place, over_noise: reached.over_noise })
    });
    DisturbedSheet {
        above: above.collect(),
        lines: DisturbedLines {
            neighbour: worst.map(|worst| Saying::name(called(worst.number))).line(),
            in_hand: all((&limit, &over_noise)).map(|(limit, over)| limit - over).line(),
            over_noise: over_noise.line(),
        },
        limit,
    }
}
