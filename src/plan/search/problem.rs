//! What there is to choose from, and what each choice does to everybody else.
//!
//! Powers over the noise are asked for once, sender by sender and frequency by frequency, and looked up from then on. What
//! does not reach a receiver has no entry, so that a large network stays as thin as its interference.

use std::collections::BTreeMap;

use rayon::prelude::*;

use crate::spec::Polarisation;
use crate::units::{Decibels, Gigahertz};

/// A hop as the search sees it.
#[derive(Debug, Clone)]
pub struct Candidate {
    /// Sites of its ends, by numbers of the caller's own.
    pub sites: [usize; 2],
    /// Hops of one band send in one half from a site.
    pub band: usize,
    /// What it may be set to: one choice if it stays as it is, and never none.
    pub choices: Vec<Choice>,
    /// The choice it is set to today, where that is among them.
    pub now: Option<usize>,
}

/// What a hop may be set to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Choice {
    /// What its ends send on; the same where they take turns.
    pub sent: [Gigahertz; 2],
    /// The polarisation of both ends.
    pub polarisation: Polarisation,
}

impl Choice {
    /// Whether the first end sends in the upper half. None where both take turns.
    #[must_use]
    pub fn first_is_upper(&self) -> Option<bool> {
        let [first, second] = self.sent;
        (first != second).then_some(first > second)
    }
}

/// One end of one hop.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct End {
    /// Number of the hop.
    pub hop: usize,
    /// 0 or 1.
    pub end: usize,
}

/// What lies between the hops of a problem.
pub trait Ether: Sync {
    /// Other hops of which something may reach a hop, by their numbers, ascending.
    fn near(&self, hop: usize) -> Vec<usize>;

    /// Power of a sender at a receiver of another hop over the noise there, a ratio of powers, before its filter, by the
    /// frequency it is sent on: in the polarisation that is listened to, and in the other. None if it never counts.
    fn over_noise(&self, from: End, to: End, sent: &[Gigahertz]) -> Option<Vec<[f64; 2]>>;

    /// What reaches a receiver whatever is chosen, over its noise: of hops that are none of its [`Ether::near`] ones.
    fn constant(&self, _to: End) -> f64 {
        0.0
    }

    /// What the filter of a receiver lets in of a sender, a share of its power.
    fn passed(&self, from: End, sent: Gigahertz, to: End, heard: Gigahertz) -> f64;

    /// Ends of one class send as wide and as clean, and listen as sharply, as one another.
    fn class(&self, end: End) -> usize;
}

/// What a plan comes to. Less is better, the greatest degradation first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Worth {
    /// The greatest degradation of any receiver.
    pub greatest: Decibels,
    /// Those of all receivers together.
    pub sum: Decibels,
}

/// Degradations nearer to each other than this are one.
const ONE: f64 = 1e-9;

impl Worth {
    /// Of degradations, one a receiver.
    pub(super) fn of(degradations: impl Iterator<Item = f64>) -> Self {
        let (greatest, sum) = degradations.fold((0.0_f64, 0.0), |(most, sum), next| (most.max(next), sum + next));
        Self { greatest: Decibels(greatest), sum: Decibels(sum) }
    }

    /// Whether it is better than another by more than rounding.
    #[must_use]
    pub fn is_better_than(&self, other: &Self) -> bool {
        let greatest = self.greatest.0 - other.greatest.0;
        greatest < -ONE || (greatest <= ONE && self.sum.0 < other.sum.0 - ONE)
    }
}

/// What one power ratio costs a receiver, in decibels.
pub(super) fn degradation(over_noise: f64) -> f64 {
    10.0 / std::f64::consts::LN_10 * libm::log1p(over_noise.max(0.0))
}

/// What comes from one hop to one receiver.
#[derive(Debug, Clone, Copy)]
pub(super) struct Reach {
    /// The hop it comes from.
    pub(super) from: u32,
    /// From its first end, and from its second.
    rows: [Option<Row>; 2],
}

/// From one sender to one receiver.
#[derive(Debug, Clone, Copy)]
struct Row {
    /// Where its powers begin: by the sender's frequency, in like polarisation and in the other.
    powers: u32,
    /// Which table of shares.
    shares: u32,
}

/// The same with its powers, before they all stand in one list.
struct Found {
    from: u32,
    rows: [Option<(Vec<[f64; 2]>, u32)>; 2],
}

/// What is let in, by frequency that is sent and frequency that is listened to.
#[derive(Debug)]
struct Shares {
    heard: usize,
    passed: Vec<f64>,
}

/// A choice with its frequencies by their numbers in the lists of the classes of both ends.
#[derive(Debug, Clone, Copy)]
struct Numbered {
    sent: [u16; 2],
    heard: [u16; 2],
    polarisation: Polarisation,
}

/// All hops with all their choices, and what they do to each other.
#[derive(Debug)]
pub struct Problem {
    pub(super) hops: Vec<Candidate>,
    /// The choices of all hops, and where those of each begin.
    numbered: Vec<Numbered>,
    starts: Vec<usize>,
    /// What reaches each receiver, two a hop.
    pub(super) incoming: Vec<Vec<Reach>>,
    /// What reaches each receiver whatever is chosen.
    pub(super) constant: Vec<f64>,
    /// Receivers that something of a hop reaches, with what.
    pub(super) outgoing: Vec<Vec<(usize, Reach)>>,
    powers: Vec<[f64; 2]>,
    shares: Vec<Shares>,
}

/// The table of shares of each pair of classes.
type Tables = BTreeMap<(usize, usize), u32>;

/// Frequencies of each class of ends, ascending.
type Lists = BTreeMap<usize, Vec<Gigahertz>>;

/// Asks for everything that the search will look up.
struct Survey<'e, E> {
    hops: &'e [Candidate],
    ether: &'e E,
    lists: Lists,
}

impl Problem {
    /// Of hops, and of what lies between them.
    pub fn of(hops: Vec<Candidate>, ether: &impl Ether) -> Self {
        let survey = Survey { lists: lists(&hops, ether), hops: &hops, ether };
        let starts = hops.iter().scan(0, |next, hop| Some(std::mem::replace(next, *next + hop.choices.len())));
        let starts = starts.collect();
        let numbered = (0..hops.len()).flat_map(|hop| survey.numbered(hop)).collect();
        let (tables, shares) = survey.shares();
        let ends: Vec<End> = (0..hops.len()).flat_map(ends).collect();
        let found: Vec<Vec<Found>> = ends.par_iter().map(|end| survey.reaching(*end, &tables)).collect();
        let (mut incoming, mut outgoing) = (Vec::with_capacity(ends.len()), vec![Vec::new(); hops.len()]);
        let mut powers = Vec::new();
        for (receiver, found) in found.into_iter().enumerate() {
            let reaches: Vec<Reach> = found.into_iter().map(|found| found.into_list(&mut powers)).collect();
            for reach in &reaches {
                outgoing[reach.from as usize].push((receiver, *reach));
            }
            incoming.push(reaches);
        }
        let constant = ends.par_iter().map(|end| ether.constant(*end)).collect();
        Self { hops, numbered, starts, incoming, constant, outgoing, powers, shares }
    }

    /// Power over the noise that comes along one way, by the choices of both hops. `receiver` counts two a hop.
    pub(super) fn power(&self, reach: &Reach, from: usize, receiver: usize, to: usize) -> f64 {
        let sender = &self.numbered[self.starts[reach.from as usize] + from];
        let listener = &self.numbered[self.starts[receiver / 2] + to];
        let heard = usize::from(listener.heard[receiver % 2]);
        let mut power = 0.0;
        for (row, sent) in reach.rows.iter().zip(sender.sent) {
            let (Some(row), sent) = (row, usize::from(sent)) else { continue };
            let table = &self.shares[row.shares as usize];
            let passed = table.passed[sent * table.heard + heard];
            // Most are on another channel: their powers are not even looked at.
            if passed > 0.0 {
                let [like, crossed] = self.powers[row.powers as usize + sent];
                power += passed * together(like, crossed, sender, listener);
            }
        }
        power
    }

    /// Everything that reaches a receiver, by the choices of all hops.
    pub(super) fn heard(&self, receiver: usize, choices: &[usize]) -> f64 {
        let to = choices[receiver / 2];
        let incoming = self.incoming[receiver].iter();
        let moving: f64 = incoming.map(|reach| self.power(reach, choices[reach.from as usize], receiver, to)).sum();
        self.constant[receiver] + moving
    }

    /// What the choices of all hops come to.
    pub(super) fn worth(&self, choices: &[usize]) -> Worth {
        Worth::of((0..self.incoming.len()).map(|receiver| degradation(self.heard(receiver, choices))))
    }

    /// Powers that are looked up when a hop is set to something else.
    pub(super) fn lookups(&self, hop: usize) -> usize {
        self.incoming[2 * hop].len() + self.incoming[2 * hop + 1].len() + 2 * self.outgoing[hop].len()
    }

    /// The most that a hop may bring to others and others to it, all on one channel: how hard it is to place.
    pub(super) fn hardness(&self, hop: usize) -> f64 {
        let own = [2 * hop, 2 * hop + 1].into_iter().flat_map(|receiver| self.incoming[receiver].iter());
        own.map(|reach| self.most(reach)).chain(self.outgoing[hop].iter().map(|(_, reach)| self.most(reach))).sum()
    }

    fn most(&self, reach: &Reach) -> f64 {
        // Any frequency will do: they hardly differ.
        let powers = reach.rows.iter().flatten().map(|row| {
            let all = &self.powers[row.powers as usize..];
            all.iter().map(|[like, _]| *like).find(|like| *like > 0.0).unwrap_or_default()
        });
        powers.fold(0.0, f64::max)
    }
}

impl Found {
    fn into_list(self, powers: &mut Vec<[f64; 2]>) -> Reach {
        let rows = self.rows.map(|row| {
            row.map(|(list, shares)| {
                let start = u32::try_from(powers.len()).expect("fewer powers than would fit into memory");
                powers.extend(list);
                Row { powers: start, shares }
            })
        });
        Reach { from: self.from, rows }
    }
}

/// Both carriers of a dual sender come through, one of them crossed; of two that listen one has the polarisation that is
/// sent.
fn together(like: f64, crossed: f64, sender: &Numbered, listener: &Numbered) -> f64 {
    match (sender.polarisation, listener.polarisation) {
        (Polarisation::Dual, _) => like + crossed,
        (_, Polarisation::Dual) => like,
        (one, other) if one == other => like,
        _ => crossed,
    }
}

fn small(number: usize) -> u32 {
    u32::try_from(number).expect("no network has so many hops")
}

fn ends(hop: usize) -> impl Iterator<Item = End> {
    (0..2).map(move |end| End { hop, end })
}

fn lists(hops: &[Candidate], ether: &impl Ether) -> Lists {
    let mut lists = Lists::new();
    for (hop, candidate) in hops.iter().enumerate() {
        for end in ends(hop) {
            let list = lists.entry(ether.class(end)).or_default();
            list.extend(candidate.choices.iter().flat_map(|choice| choice.sent));
        }
    }
    for list in lists.values_mut() {
        list.sort_by(|one, other| one.0.total_cmp(&other.0));
        list.dedup();
    }
    lists
}

impl<E: Ether> Survey<'_, E> {
    fn list(&self, end: End) -> &[Gigahertz] {
        self.lists.get(&self.ether.class(end)).map_or(&[], Vec::as_slice)
    }

    fn number(&self, end: End, frequency: Gigahertz) -> usize {
        let found = self.list(end).binary_search_by(|known| known.0.total_cmp(&frequency.0));
        found.expect("every frequency of a choice is in the list of its class")
    }

    fn numbered(&self, hop: usize) -> impl Iterator<Item = Numbered> {
        let small = |number: usize| u16::try_from(number).expect("no band has so many channels");
        let both = move |sent: [Gigahertz; 2]| [0, 1].map(|end| small(self.number(End { hop, end }, sent[end])));
        self.hops[hop].choices.iter().map(move |choice| Numbered {
            sent: both(choice.sent),
            heard: both([choice.sent[1], choice.sent[0]]),
            polarisation: choice.polarisation,
        })
    }

    /// Tables of what is let in, one for each pair of classes, and where each stands.
    fn shares(&self) -> (Tables, Vec<Shares>) {
        let mut first: BTreeMap<usize, End> = BTreeMap::new();
        for end in (0..self.hops.len()).flat_map(ends) {
            first.entry(self.ether.class(end)).or_insert(end);
        }
        let (mut numbers, mut tables) = (BTreeMap::new(), Vec::new());
        for (class, from) in &first {
            for (other, to) in &first {
                let (sent, heard) = (self.list(*from), self.list(*to));
                let passed = sent.iter().flat_map(|s| heard.iter().map(|h| self.ether.passed(*from, *s, *to, *h)));
                numbers.insert((*class, *other), small(tables.len()));
                tables.push(Shares { heard: heard.len(), passed: passed.collect() });
            }
        }
        (numbers, tables)
    }

    fn reaching(&self, to: End, tables: &Tables) -> Vec<Found> {
        let near = self.ether.near(to.hop).into_iter().filter(|hop| *hop != to.hop);
        near.filter_map(|hop| {
            let rows = [0, 1].map(|end| self.row(End { hop, end }, to, tables));
            rows.iter().any(Option::is_some).then_some(Found { from: small(hop), rows })
        })
        .collect()
    }

    fn row(&self, from: End, to: End, tables: &Tables) -> Option<(Vec<[f64; 2]>, u32)> {
        let list = self.list(from);
        let mut sent: Vec<usize> =
            self.hops[from.hop].choices.iter().map(|choice| self.number(from, choice.sent[from.end])).collect();
        sent.sort_unstable();
        sent.dedup();
        let frequencies: Vec<Gigahertz> = sent.iter().map(|number| list[*number]).collect();
        let found = self.ether.over_noise(from, to, &frequencies)?;
        let mut powers = vec![[0.0; 2]; list.len()];
        for (number, power) in sent.into_iter().zip(found) {
            powers[number] = power;
        }
        let shares = tables[&(self.ether.class(from), self.ether.class(to))];
        Some((powers, shares))
    }
}
