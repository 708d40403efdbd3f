//! Which ends stand together: on one support, at one site.
//!
//! The index is built once a network, from all of its hops, and holds numbers alone. What a hop shares with others is looked
//! up when its sheet is computed.

use std::collections::HashMap;

use super::resolved::{ResolvedEnd, ResolvedHop};
use crate::place::{DocumentId, Place, Placed as _};
use crate::spec::EndName;

/// Which ends of a network stand on one support and at one site.
#[derive(Debug, Default)]
pub struct Company {
    /// By the place of the support.
    on_support: HashMap<Place, Vec<Seat>>,
    at_site: HashMap<DocumentId, Vec<Seat>>,
    /// By the place of the earth point.
    on_earth: HashMap<Place, Vec<Seat>>,
    /// By site, model and name of the unit, with the number of the run.
    on_supply: HashMap<(DocumentId, DocumentId, String), Vec<(Seat, usize)>>,
    /// Hops by their document.
    by_hop: HashMap<DocumentId, usize>,
    /// Runs of other ends that lead to an end, with the number of the run.
    arriving: HashMap<(DocumentId, EndName), Vec<(Seat, usize)>>,
}

/// An end, by the number of its hop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Seat {
    hop: usize,
    end: EndName,
}

/// A run that another one shares a supply with.
#[derive(Debug, Clone, Copy)]
pub struct FellowRun<'n> {
    /// Its end.
    pub fellow: Fellow<'n>,
    /// Its number among the runs of the end.
    pub run: usize,
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
            company.by_hop.insert(resolved.hop.at, hop);
            for end in resolved.ends.iter() {
                let seat = Seat { hop, end: end.name };
                company.on_support.entry(place(end)).or_default().push(seat);
                company.at_site.entry(end.site.at).or_default().push(seat);
                if let Some(earth) = end.earth {
                    company.on_earth.entry(earth.place()).or_default().push(seat);
                }
                for run in 0..end.runs.len() {
                    if let Some(far) = end.runs[run].ends_at {
                        company.arriving.entry((far.hop.at, far.end)).or_default().push((seat, run));
                    }
                    if let Some(unit) = unit(end, run) {
                        company.on_supply.entry(unit).or_default().push((seat, run));
                    }
                }
            }
        }
        // In an order that is the same wherever the files lie.
        let by_id = |seat: &Seat| (&*hops[seat.hop].hop.id.0, seat.end);
        let lists = company.on_support.values_mut().chain(company.at_site.values_mut());
        let lists = lists.chain(company.on_earth.values_mut());
        lists.for_each(|seats| seats.sort_by(|one, other| by_id(one).cmp(&by_id(other))));
        let runs = company.on_supply.values_mut().chain(company.arriving.values_mut());
        runs.for_each(|runs| {
            runs.sort_by(|(one, first), (other, second)| (by_id(one), first).cmp(&(by_id(other), second)));
        });
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
    end.support.place()
}

/// The supply that a run names as one thing: where it stands, of what model it is, what it is called.
fn unit(end: &ResolvedEnd<'_>, run: usize) -> Option<(DocumentId, DocumentId, String)> {
    let run = &end.runs[run];
    Some((end.site.at, run.supply?.at, run.run.spec.supply_unit.as_ref()?.to_string()))
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

    /// The other ends that bond to the earth point of an end.
    pub fn on_earth(self, hop: &ResolvedHop<'_>, end: &ResolvedEnd<'_>) -> impl Iterator<Item = Fellow<'h>> {
        let own = (hop.hop.at, end.name);
        let seats = end.earth.and_then(|earth| self.company.on_earth.get(&earth.place()));
        self.met(seats).filter(move |fellow| (fellow.hop.hop.at, fellow.end.name) != own)
    }

    /// All runs on the supply of a run, itself too; none where it names no unit.
    pub fn on_supply(self, end: &ResolvedEnd<'_>, run: usize) -> impl Iterator<Item = FellowRun<'h>> {
        let runs = unit(end, run).and_then(|unit| self.company.on_supply.get(&unit));
        runs.into_iter().flatten().map(move |(seat, run)| {
            let hop = &self.hops[seat.hop];
            FellowRun { fellow: Fellow { hop, end: &hop.ends[seat.end] }, run: *run }
        })
    }

    /// An end by its hop; none where that hop is not judged.
    #[must_use]
    pub fn end(self, hop: DocumentId, end: EndName) -> Option<Fellow<'h>> {
        let hop = &self.hops[*self.company.by_hop.get(&hop)?];
        Some(Fellow { hop, end: &hop.ends[end] })
    }

    /// The runs of other ends that lead to an end, in order of the id of their hop.
    pub fn arriving(self, hop: &ResolvedHop<'_>, end: &ResolvedEnd<'_>) -> impl Iterator<Item = FellowRun<'h>> {
        let runs = self.company.arriving.get(&(hop.hop.at, end.name));
        runs.into_iter().flatten().map(move |(seat, run)| {
            let hop = &self.hops[seat.hop];
            FellowRun { fellow: Fellow { hop, end: &hop.ends[seat.end] }, run: *run }
        })
    }

    fn met(self, seats: Option<&'h Vec<Seat>>) -> impl Iterator<Item = Fellow<'h>> {
        seats.into_iter().flatten().map(move |seat| {
            let hop = &self.hops[seat.hop];
            Fellow { hop, end: &hop.ends[seat.end] }
        })
    }
}
