//! A better plan for hops of a network, looked for within what each may be set to.

use std::collections::HashMap;

use crate::air::{Air, Owner};
use crate::at;
use crate::finding::Spot;
use crate::network::ResolvedHop;
use crate::place::DocumentId;
use crate::spec::{EndName, Id, Way};
use crate::units::Gigahertz;

use super::over_air::{self, OverAir};
use super::search::{self, Candidate, Choice, NoPlan, Problem};
use super::settings::{self, Setting};

/// What is proposed for a network.
#[derive(Debug, Default)]
pub struct Proposal {
    /// Hops that would be set to something else, in order of file.
    pub moves: Vec<Move>,
    /// Hops that keep what they are set to, for they have a licence or a registration.
    pub licensed: Vec<String>,
    /// Hops that could not be set to anything else.
    pub stuck: Vec<String>,
    /// How many hops were looked at.
    pub looked_at: usize,
    /// Whether it was shown that nothing is better.
    pub proven: bool,
}

/// One hop set to something else.
#[derive(Debug)]
pub struct Move {
    /// Its id.
    pub hop: String,
    /// What it is set to.
    pub today: Setting,
    /// What it would be set to.
    pub then: Setting,
    /// What has to be written, and where.
    pub edits: Vec<(Spot, String)>,
}

/// Why there is no plan, in words that name sites and hops.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refusal(pub String);

/// Looks for a better plan of the hops that are named, or of all that have no licence of their own where none is. Of the
/// others, and of neighbours, everything counts and nothing changes.
///
/// # Errors
/// The sites cannot be told into halves.
pub fn propose(air: &Air<'_>, hops: &[ResolvedHop<'_>], named: &[String]) -> Result<Proposal, Refusal> {
    let mut proposal = Proposal::default();
    let (mut all, mut stations) = (Vec::new(), Vec::new());
    for (number, hop) in hops.iter().enumerate() {
        let both = EndName::BOTH.map(|end| air.number(hop.hop.at, end));
        if both.iter().any(Option::is_none) {
            continue;
        }
        let settings = settings_of(air, hop, named, &mut proposal);
        all.push((number, settings));
        stations.push(both);
    }
    let mut candidates = candidates(hops, &all);
    add_neighbours(air, &mut candidates, &mut stations);
    let ether = OverAir::of(air, stations, &candidates);
    let problem = Problem::of(candidates, &ether);
    let plan = search::best(&problem).map_err(|refused| refusal(&refused, hops, &all))?;
    proposal.proven = plan.proven;
    for ((number, settings), choice) in all.iter().zip(plan.choices) {
        if choice != 0 {
            proposal.moves.push(Move::of(&hops[*number], settings[0], settings[choice]));
        }
    }
    Ok(proposal)
}

fn settings_of(air: &Air<'_>, hop: &ResolvedHop<'_>, named: &[String], proposal: &mut Proposal) -> Vec<Setting> {
    let id = &*hop.hop.id.0;
    let is_named = named.iter().any(|name| name == id);
    let keep = || vec![Setting::today(hop)];
    if !named.is_empty() && !is_named {
        return keep();
    }
    if !is_named && hop.hop.licence.number.is_some() {
        proposal.licensed.push(id.to_owned());
        return keep();
    }
    let settings = settings::of(air, hop);
    proposal.looked_at += 1;
    if settings.len() == 1 {
        proposal.stuck.push(id.to_owned());
    }
    settings
}

/// Hops with their choices: sites by number, bands by where their channels lie.
fn candidates(hops: &[ResolvedHop<'_>], all: &[(usize, Vec<Setting>)]) -> Vec<Candidate> {
    let mut sites: HashMap<DocumentId, usize> = HashMap::new();
    let bands = bands(hops, all);
    let candidate = |((number, settings), band): (&(usize, Vec<Setting>), usize)| {
        let sites = hops[*number].ends.each_ref().map(|end| {
            let next = sites.len();
            *sites.entry(end.site.at).or_insert(next)
        });
        let choices = settings
            .iter()
            .map(|setting| Choice { sent: [setting.sends.a, setting.sends.b], polarisation: setting.polarisation });
        Candidate { sites: [sites.a, sites.b], band, choices: choices.collect(), now: Some(0) }
    };
    all.iter().zip(bands).map(candidate).collect()
}

/// The band of each hop: hops whose channels, of either way, lie between each other's are of one band.
fn bands(hops: &[ResolvedHop<'_>], all: &[(usize, Vec<Setting>)]) -> Vec<usize> {
    let span = |(number, settings): &(usize, Vec<Setting>)| {
        let wide = hops[*number].hop.channel.bandwidth.value.0 / 2000.0;
        let centres = settings.iter().flat_map(|setting| [setting.sends.a.0, setting.sends.b.0]);
        let (low, high) =
            centres.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), next| (low.min(next), high.max(next)));
        (low - wide, high + wide)
    };
    let spans: Vec<(f64, f64)> = all.iter().map(span).collect();
    let mut order: Vec<usize> = (0..spans.len()).collect();
    order.sort_by(|one, other| spans[*one].0.total_cmp(&spans[*other].0));
    let (mut bands, mut band, mut reach) = (vec![0; spans.len()], 0, f64::NEG_INFINITY);
    for number in order {
        let (low, high) = spans[number];
        if low > reach {
            band += 1;
        }
        reach = reach.max(high);
        bands[number] = band;
    }
    bands
}

/// Neighbours are hops of one end that stay as they are, at sites of their own.
fn add_neighbours(air: &Air<'_>, candidates: &mut Vec<Candidate>, stations: &mut Vec<[Option<usize>; 2]>) {
    let mut site = candidates.iter().flat_map(|candidate| candidate.sites).max().map_or(0, |most| most + 1);
    for (number, station) in air.stations().iter().enumerate() {
        let Owner::Neighbour(_) = station.owner else { continue };
        let Some((sent, polarisation)) = over_air::neighbour(station) else { continue };
        let choices = vec![Choice { sent, polarisation }];
        // Sites that no hop leads to, of no band: they hold nobody's half.
        candidates.push(Candidate { sites: [site, site + 1], band: 0, choices, now: Some(0) });
        stations.push([Some(number), None]);
        site += 2;
    }
}

fn refusal(refused: &NoPlan, hops: &[ResolvedHop<'_>], all: &[(usize, Vec<Setting>)]) -> Refusal {
    let mut names: HashMap<usize, &Id> = HashMap::new();
    let mut numbers: HashMap<DocumentId, usize> = HashMap::new();
    for (number, _) in all {
        for end in hops[*number].ends.iter() {
            let next = numbers.len();
            names.insert(*numbers.entry(end.site.at).or_insert(next), &end.site.id);
        }
    }
    let listed = |sites: &[usize]| {
        let names: Vec<String> =
            sites.iter().filter_map(|site| names.get(site)).map(|name| format!("`{name}`")).collect();
        names.join(", ")
    };
    let hop = |number: usize| all.get(number).map(|(hop, _)| format!("`{}`", hops[*hop].hop.id)).unwrap_or_default();
    Refusal(match refused {
        NoPlan::OddRing(sites) => format!(
            "the sites {} close a ring of an odd number of hops of one band: whichever half the first sends in, two \
             neighbours would send in the same one; one of these hops needs another band",
            listed(sites)
        ),
        NoPlan::Held(sites) => format!(
            "along the sites {} the halves take turns, and the hops that stay as they are, or radios of one half only, \
             hold the first and the last of them in halves that do not go together",
            listed(sites)
        ),
        NoPlan::Mixed { site, hops: [one, other] } => format!(
            "site {} sends in both halves of the band, by the hops {} and {}, which are to stay as they are",
            listed(&[*site]),
            hop(*one),
            hop(*other)
        ),
    })
}

impl Move {
    fn of(resolved: &ResolvedHop<'_>, today: Setting, then: Setting) -> Self {
        let hop = resolved.hop;
        let mut edits = Vec::new();
        for way in Way::BOTH {
            let (before, after) = (today.sends[way.sender()], then.sends[way.sender()]);
            if before != after {
                edits.push((Spot::Field(resolved.frequency_at(way)), spelled(after)));
            }
        }
        if today.polarisation != then.polarisation {
            edits.push((Spot::Field(at!(hop.channel.polarisation)), then.polarisation.word().to_owned()));
        }
        for name in EndName::BOTH {
            let (part, before, after) = (&resolved.ends[name], today.halves[name], then.halves[name]);
            if let (true, Some(half)) = (before != after, part.radio.halves.get(after)) {
                let end = part.end;
                edits.push((Spot::Field(at!(end.half)), half.id.to_string()));
            }
        }
        Self { hop: hop.id.to_string(), today, then, edits }
    }
}

/// Everything else that a hop may be set to, the nearest channels first; at today's channels its halves as they should be.
#[must_use]
pub fn moves(air: &Air<'_>, resolved: &ResolvedHop<'_>) -> Vec<Move> {
    let today = Setting::today(resolved);
    let mut others = settings::of(air, resolved);
    others.retain(|setting| *setting != today);
    others.extend(settings::in_halves_that_fit(resolved).filter(|setting| *setting != today));
    let away = |setting: &Setting| {
        let moved = (setting.sends.a.0 - today.sends.a.0).abs() + (setting.sends.b.0 - today.sends.b.0).abs();
        (moved, setting.polarisation != today.polarisation)
    };
    others.sort_by(|one, other| {
        let (one, other) = (away(one), away(other));
        one.0.total_cmp(&other.0).then(one.1.cmp(&other.1))
    });
    others.into_iter().map(|then| Move::of(resolved, today, then)).collect()
}

impl Proposal {
    /// Takes that of another network in.
    pub fn add(&mut self, mut other: Self) {
        self.proven = other.proven && (self.looked_at == 0 || self.proven);
        self.moves.append(&mut other.moves);
        self.licensed.append(&mut other.licensed);
        self.stuck.append(&mut other.stuck);
        self.looked_at += other.looked_at;
    }
}

/// A change in words: what becomes of the channels, the polarisation and the halves.
#[must_use]
pub fn in_words(changed: &Move) -> String {
    let (today, then) = (&changed.today, &changed.then);
    let mut words = Vec::new();
    if today.sends != then.sends {
        let pair = |setting: &Setting| format!("{}/{}", setting.sends.a, setting.sends.b);
        words.push(format!("{} → {}", pair(today), pair(then)));
    }
    if today.polarisation != then.polarisation {
        words.push(format!("{} → {}", today.polarisation.word(), then.polarisation.word()));
    }
    if today.halves != then.halves {
        words.push("halves exchanged".to_owned());
    }
    format!("{}: {}", changed.hop, words.join(", "))
}

/// A frequency as it is written, to the kilohertz.
fn spelled(frequency: Gigahertz) -> String {
    format!("{} GHz", (frequency.0 * 1e6).round() / 1e6)
}
