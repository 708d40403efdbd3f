//! Which ends stand together: on one support, at one site.
//!
//! The index is built once a network, from all of its hops, and holds numbers alone. What a hop shares with others is looked
//! up when its sheet is computed.

use std::collections::HashMap;

use super::resolved::{ResolvedEnd, ResolvedHop};
use crate::place::{DocumentId, Place};
use crate::spec::EndName;

/// Which ends of a network stand on one support and at one site.
#[derive(Debug, Default)]
pub struct Company {
    /// By the place of the support.
    on_support: HashMap<Place, Vec<Seat>>,
    at_site: HashMap<DocumentId, Vec<Seat>>,
}

/// An end, by the number of its hop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Seat {
    hop: usize,
    end: EndName,
}

/// An end that another one shares a support or a site with.
#[derive(Debug, Clone, Copy)]
pub struct Fellow<'n> {
    /// Its hop.
    pub hop: &'n ResolvedHop<'n>,
    /// The end.
    pub end: &'n ResolvedEnd<'n>,
}

impl Company {
    /// That of the hops of a network.
    #[must_use]
    pub fn of(hops: &[ResolvedHop<'_>]) -> Self {
        let mut company = Self::default();
        for (hop, resolved) in hops.iter().enumerate() {
            for end in resolved.ends.iter() {
                let seat = Seat { hop, end: end.name };
                company.on_support.entry(place(end)).or_default().push(seat);
                company.at_site.entry(end.site.at).or_default().push(seat);
            }
        }
        // In an order that is the same wherever the files lie.
        let by_id = |seat: &Seat| (&*hops[seat.hop].hop.id.0, seat.end);
        let lists = company.on_support.values_mut().chain(company.at_site.values_mut());
        lists.for_each(|seats| seats.sort_by(|one, other| by_id(one).cmp(&by_id(other))));
        company
    }

    /// The same with the hops it was made of, to be asked.
    #[must_use]
    pub const fn among<'h>(&'h self, hops: &'h [ResolvedHop<'h>]) -> Companions<'h> {
        Companions { company: self, hops }
    }
}

/// The place of the support of an end.
fn place(end: &ResolvedEnd<'_>) -> Place {
    use crate::place::Placed as _;
    end.support.place()
}

/// Who stands with whom.
#[derive(Debug, Clone, Copy)]
pub struct Companions<'h> {
    company: &'h Company,
    hops: &'h [ResolvedHop<'h>],
}

impl<'h> Companions<'h> {
    /// All ends at a site, in order of the id of their hop.
    pub fn at_site(self, site: DocumentId) -> impl Iterator<Item = Fellow<'h>> {
        self.met(self.company.at_site.get(&site))
    }

    /// The other ends on the support of an end, in order of the id of their hop.
    pub fn beside(self, hop: &ResolvedHop<'_>, end: &ResolvedEnd<'_>) -> impl Iterator<Item = Fellow<'h>> {
        let own = (hop.hop.at, end.name);
        self.met(self.company.on_support.get(&place(end)))
            .filter(move |fellow| (fellow.hop.hop.at, fellow.end.name) != own)
    }

    fn met(self, seats: Option<&'h Vec<Seat>>) -> impl Iterator<Item = Fellow<'h>> {
        seats.into_iter().flatten().map(move |seat| {
            let hop = &self.hops[seat.hop];
            Fellow { hop, end: &hop.ends[seat.end] }
        })
    }
}
